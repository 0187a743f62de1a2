// A picture that a phone took, where no program of its own reads codes: what its codes open.
#include <QUrl>

#include "station/visit.h"

namespace lardiner::station {

Reply scan_page(const Visit& visit) { return visit.page(QStringLiteral("scan"), visit.word("page.scan"), Part()); }

Reply scan(const Visit& visit) {
  if (visit.request().uploads.empty()) return visit.message(400, "page.no_picture");
  const Upload& upload = visit.request().uploads.front();
  const auto codes = visit.desk().codes(upload.bytes, QStringLiteral("picture"));
  Part part;
  if (!codes) add_problems(part, {codes.error()});
  for (const QString& code : codes ? *codes : QStringList()) {
    const Opened opened = visit.desk().open(code, {});
    Part& row = part.add("CODE");
    row.set("WHAT", opened.what);
    if (!opened.superseded.isEmpty()) row.add("SUPERSEDED");
    if (!opened.lot.isEmpty()) row.add("OPENS").set("LOT", opened.lot).set("ITEM", opened.item);
  }
  if (codes && codes->isEmpty()) part.add("NONE");
  return visit.page(QStringLiteral("scan"), visit.word("page.scan"), std::move(part));
}

}  // namespace lardiner::station
