// The checks of an element's content that its identifier names; for element_fault.cpp alone.
#pragma once

#include <QString>
#include <QStringView>

namespace lardiner::gs1 {

/// One check of one component's content.
struct ContentCheck {
  const char* name;                  ///< as the GS1 Barcode Syntax Dictionary calls it
  bool (*passes)(QStringView text);  ///< REQUIRES: length and characters of the component hold
  const char* fault;                 ///< "is no date (year, month and day, two digits each)": follows the quoted value
};

/// The check of that name, or nullptr.
const ContentCheck* content_check(QStringView name);

}  // namespace lardiner::gs1
