// The demo day's labels, printed once for all tests: the PDFs, their pages, and what the records say on their own.
#pragma once

#include <QJsonArray>
#include <QJsonObject>
#include <map>

#include "pages.h"

namespace lardiner::command {

/// The containers of one record, read from the JSON Lines without the program.
struct Making {
  QString item;
  int containers = 0;
  bool ingredient = false;  ///< an opened, thawed, cut or decanted package
};

struct DemoDay {
  Folder folder;
  Ran ran;                   ///< labels … --out labels
  QStringList files;         ///< "lid.pdf", by name
  std::vector<Page> pages;   ///< of all files, with their codes
  QJsonArray batches;        ///< of dates --json
  std::vector<Making> made;  ///< in the order of the records
};

const DemoDay& demo_day();

/// What a page and the report of dates say of the same container.
struct Labelled {
  const Page* page = nullptr;
  QString lot;
  int number = 0, of = 0;  ///< "Tub 3 of 24"
  QJsonObject batch;       ///< of dates --json
  QJsonObject date;        ///< the one of its dates that names this container
};

/// Every page with its batch and date, found by what is printed on it. Fails the test where a page has none or two.
std::vector<Labelled> labelled(const DemoDay& day);

}  // namespace lardiner::command
