// The small kitchen with an assembled item besides, for prep sheets, assembly sheets and plans.
#pragma once

#include <QJsonArray>
#include <QJsonDocument>
#include <QJsonObject>
#include <QRegularExpression>

#include "pages.h"

namespace lardiner::command {

/// Raw cod under lime butter, ten to a making; one in twenty is lost on the way.
inline const QByteArray kParcel = R"(
[[site]]
id = "mill-road"
name = "Mill Road"

[[ingredient]]
id = "cod"
name = "Cod"
tcs = "yes"
tcs_basis = "raw fish"
must_be_cooked = true
food = "fish"
edible = "80 %"
supplier_item = { id = "cod-box", supplier = "Pier Fish", contains = ["fish:cod"], checked = 2026-01-05, source = "label" }

[[product]]
id = "cod-parcel"
name = "Cod parcel"
kind = "assembled item"
code = "CPA"
item_number = "00000003"
tcs = "yes"
tcs_basis = "raw fish"
makes = "10 pieces"
unit_weight = "100 g"
make_over = "5 %"
formula = [
  { item = "cod", per_unit = "90 g" },
  { item = "lime-butter", per_unit = "10 g" },
]
step = { kind = "work", text = "Lay the butter on the cod", takes = "20 min" }
shelf_life = { state = "chilled", keeps = "2 days", authority = "kitchen rule" }
container = { kind = "tray", holds = "12 pieces", media = "side", purpose = "inside" }
)";

struct WorkKitchen {
  Folder folder;

  WorkKitchen() {
    folder.copy_book(kSmallKitchen, "kitchen");
    folder.write("kitchen/parcel.toml", kParcel);
  }

  /// In the morning of 25 November 2026.
  Ran run(const QStringList& arguments) const {
    return folder.lardiner(QStringList{"--kitchen", "kitchen", "--at", "2026-11-25T06:00"} + arguments);
  }
  QJsonObject json(const QStringList& arguments) const {
    const Ran ran = run(QStringList{"--json"} + arguments);
    INFO(ran.err.toStdString());
    return QJsonDocument::fromJson(ran.out.toUtf8()).object();
  }
};

/// The words of a sheet's text that do not stand on the pages of its PDF; boxes, lines to write on and bars are no
/// words.
inline QStringList missing_words(const QString& text, const std::vector<Page>& pages) {
  QString printed;
  for (const Page& page : pages) printed += unspaced(page.text);
  static const QRegularExpression drawn(QStringLiteral("\\A[][_=*<|-]+\\z"));
  QStringList missing;
  for (const QString& word : text.simplified().split(u' '))
    if (!drawn.match(word).hasMatch() && !printed.contains(unspaced(word)) &&
        !printed.contains(unspaced(word).remove(u'|')))
      missing << word;
  return missing;
}

}  // namespace lardiner::command
