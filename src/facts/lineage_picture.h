// What the picture of a lot's lineage says: which lots went into which, before any layout.
#pragma once

#include <QDate>
#include <functional>

#include "facts/sheet_setting.h"

namespace lardiner::facts {

/// Lots and what went into what, as the ledger knows it.
struct Lineage {
  struct Lot {
    QString item, lot;
    QDate day;  ///< made or received; may be invalid
  };
  struct Into {
    size_t from = 0, to = 0;  ///< indices of `lots`
    bool assumed = false;     ///< nobody confirmed the lot
  };
  std::vector<Lot> lots;
  std::vector<Into> into;
  size_t asked = 0;  ///< the lot asked for
};

struct LineagePicture {
  struct Node {
    QString name, lot, day;
  };
  struct Edge {
    size_t from = 0, to = 0;
    bool assumed = false;
  };
  QString language, title;
  std::vector<Node> nodes;
  std::vector<Edge> edges;  ///< each pair once: assumed only where no certain one is
  size_t asked = 0;
  QStringList notes;                 ///< how to read it; what is assumed
  std::function<QString(int)> more;  ///< "More lots: 212", in place of those for which there is no room
};

/// REQUIRES: indices within `lots`. Errors: Missing where there is no lot, or a name in a language of the sheet.
problem::ExpectedAll<LineagePicture> lineage_picture(const SheetSetting& setting, const Lineage& lineage);

}  // namespace lardiner::facts
