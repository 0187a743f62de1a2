// The critical tracking events as an EPCIS 2.0 document in JSON-LD (GS1; ISO/IEC 19987). What becomes what: EXPORTS.md.
#include "ledger/export_epcis.h"

#include <QJsonArray>
#include <QJsonDocument>
#include <QJsonObject>
#include <QUrl>

#include "gs1/digital_link.h"

namespace lardiner::ledger {

using problem::Error;
using What = Tracked::What;

namespace {

// Business steps, dispositions and actions by their names in the Core Business Vocabulary 2.0.
struct Meaning {
  const char *action, *step, *disposition;
};

std::optional<Meaning> meaning(What what) {
  switch (what) {
    case What::Receiving:
      return Meaning{"OBSERVE", "receiving", "in_progress"};
    case What::ReceivingRefused:
      return Meaning{"OBSERVE", "inspecting", "non_conformant"};
    case What::Transformation:
      return Meaning{nullptr, "creating_class_instance", "active"};
    case What::Shipping:
      return Meaning{"OBSERVE", "shipping", "in_transit"};
    case What::Arrival:
      return Meaning{"OBSERVE", "arriving", "in_progress"};
    case What::ArrivalRefused:
      return Meaning{"OBSERVE", "arriving", "non_conformant"};
    case What::Return:
      return Meaning{"OBSERVE", "receiving", "returned"};
    case What::Discard:
      return Meaning{"DELETE", "destroying", "destroyed"};
    case What::Correction:
      return std::nullopt;
  }
  return std::nullopt;
}

QString encoded(const QString& text) { return QString::fromLatin1(QUrl::toPercentEncoding(text)); }

// UN/ECE Recommendation 20. One unit for each dimension, as in the spreadsheet, so that the amounts of a lot compare
// and sum over all events: what is weighed in grams stands in kilograms, to the milligram.
QString unit_code(measure::Unit unit) {
  if (unit == measure::Unit::Kilogram) return QStringLiteral("KGM");
  if (unit == measure::Unit::Pound) return QStringLiteral("LBR");
  return unit == measure::Unit::Litre ? QStringLiteral("LTR") : QStringLiteral("H87");
}

QString instant(const QDateTime& at) { return at.toOffsetFromUtc(at.offsetFromUtc()).toString(Qt::ISODate); }

class Writing {
 public:
  explicit Writing(const ExportKitchen& kitchen) : kitchen_(kitchen) {}

  /// The first lot that got no address.
  const std::optional<Error>& fault() const { return fault_; }

  std::optional<QJsonObject> event(const Tracked& one) {
    const std::optional<Meaning> as = meaning(one.what);
    if (!as || one.lot.item.isEmpty()) return std::nullopt;
    QJsonObject out{{QStringLiteral("eventID"), event_id(one)},
                    {QStringLiteral("eventTime"), instant(one.at)},
                    {QStringLiteral("eventTimeZoneOffset"), offset_text(one.at)},
                    {QStringLiteral("recordTime"), one.recorded_at.toUTC().toString(Qt::ISODate)},
                    {QStringLiteral("bizStep"), QLatin1String(as->step)},
                    {QStringLiteral("disposition"), QLatin1String(as->disposition)},
                    {QStringLiteral("readPoint"), QJsonObject{{QStringLiteral("id"), place(one)}}}};
    if (one.what == What::Transformation)
      add_making(one, out);
    else
      add_object(one, *as, out);
    return out;
  }

 private:
  QString at(const char* kind, const QString& id) const {
    return kitchen_.code_address + u'/' + QLatin1String(kind) + u'/' + encoded(id);
  }
  QString event_id(const Tracked& one) const {
    return at("entry", one.entry.text()) + u'/' + encoded(one.lot.item) + u'/' + encoded(one.lot.code);
  }
  QString place(const Tracked& one) const {
    const bool there = one.what == What::Arrival || one.what == What::ArrivalRefused || one.what == What::Discard;
    return there && !one.site.isEmpty() ? at("site", one.site) : kitchen_.code_address + QStringLiteral("/kitchen");
  }

  // EPCIS 7.3.3.3 (from memory): a quantity is above nothing; where it is not known, it and its unit are left out.
  QJsonObject element(const TrackedLot& lot, const std::optional<measure::Quantity>& quantity) {
    const auto uri = class_uri(lot, kitchen_.code_address);
    if (!uri && !fault_) fault_ = uri.error();
    QJsonObject out{{QStringLiteral("epcClass"), uri.value_or(QString())}};
    const Measured amount = quantity ? measured(*quantity, kitchen_.units) : Measured{};
    if (amount.count.amount <= 0) return out;
    out.insert(QStringLiteral("quantity"), static_cast<double>(amount.count.amount) / 1e6);
    out.insert(QStringLiteral("uom"), unit_code(amount.unit));
    return out;
  }

  void add_making(const Tracked& one, QJsonObject& out) {
    QJsonArray inputs, unsure;
    for (const TrackedInput& input : one.inputs) {
      inputs.append(element(input.lot, input.quantity));
      if (input.sure != TrackedInput::Sure::Recorded)
        unsure.append(inputs.last().toObject()[QLatin1String("epcClass")]);
    }
    out.insert(QStringLiteral("type"), QStringLiteral("TransformationEvent"));
    out.insert(QStringLiteral("transformationID"), at("entry", one.entry.text()));
    if (!inputs.isEmpty()) out.insert(QStringLiteral("inputQuantityList"), inputs);
    if (!unsure.isEmpty()) out.insert(QStringLiteral("kitchen:assumedInputs"), unsure);
    out.insert(QStringLiteral("outputQuantityList"), QJsonArray{element(one.lot, one.quantity)});
  }

  void add_object(const Tracked& one, const Meaning& as, QJsonObject& out) {
    out.insert(QStringLiteral("type"), QStringLiteral("ObjectEvent"));
    out.insert(QStringLiteral("action"), QLatin1String(as.action));
    out.insert(QStringLiteral("quantityList"), QJsonArray{element(one.lot, one.quantity)});
    add_documents(one, out);
    if (!one.from.isEmpty()) add_party(out, "source", at("supplier", one.from));
    if (one.site.isEmpty()) return;
    if (one.what == What::Return) add_party(out, "source", at("site", one.site));
    if (one.what == What::Shipping) add_party(out, "destination", at("site", one.site));
  }

  void add_documents(const Tracked& one, QJsonObject& out) const {
    QJsonArray papers;
    const auto add = [&](const char* type, const QString& id) {
      papers.append(QJsonObject{{QStringLiteral("type"), QLatin1String(type)}, {QStringLiteral("bizTransaction"), id}});
    };
    if (!one.document.isEmpty()) add("desadv", at("note", one.document));
    if (!one.order.isEmpty()) add("po", at("order", one.order));
    if (!papers.isEmpty()) out.insert(QStringLiteral("bizTransactionList"), papers);
  }

  static void add_party(QJsonObject& out, const char* which, const QString& id) {
    out.insert(
        QLatin1String(which) + QStringLiteral("List"),
        QJsonArray{QJsonObject{{QStringLiteral("type"), QStringLiteral("location")}, {QLatin1String(which), id}}});
  }

  const ExportKitchen& kitchen_;
  std::optional<Error> fault_;
};

// All but the events, which are written into its list as they come.
QByteArray head(const ExportKitchen& kitchen, const QDateTime& now) {
  const QJsonArray context{QStringLiteral("https://ref.gs1.org/standards/epcis/2.0.0/epcis-context.jsonld"),
                           QJsonObject{{QStringLiteral("kitchen"), kitchen.code_address + QStringLiteral("/terms/")}}};
  QByteArray out = QJsonDocument(QJsonObject{{QStringLiteral("@context"), context},
                                             {QStringLiteral("type"), QStringLiteral("EPCISDocument")},
                                             {QStringLiteral("schemaVersion"), QStringLiteral("2.0")},
                                             {QStringLiteral("creationDate"), instant(now)}})
                       .toJson(QJsonDocument::Compact);
  out.chop(1);
  return out + ",\"epcisBody\":{\"eventList\":[";
}

}  // namespace

problem::Expected<QString> class_uri(const TrackedLot& lot, const QString& address) {
  if (!lot.gtin.isEmpty() && !lot.code.isEmpty()) {
    auto link = gs1::digital_link({lot.gtin, lot.code, {}, {}, address, {}});
    if (!link) link.error().what = QStringLiteral("lot %1 of %2: ").arg(lot.code, lot.item) + link.error().what;
    return link;
  }
  const QString item = address + QStringLiteral("/item/") + encoded(lot.item);
  return lot.code.isEmpty() ? item : item + QStringLiteral("/lot/") + encoded(lot.code);
}

problem::Expected<qint64> write_epcis(Ledger& ledger, const ExportScope& scope, const ExportKitchen& kitchen,
                                      const QDateTime& now, const Sink& sink) {
  Writing writing(kitchen);
  qint64 events = 0;
  if (!sink(head(kitchen, now))) return 0;
  const auto told = each_tracked(ledger, scope, kitchen, [&](const Tracked& one) {
    const std::optional<QJsonObject> event = writing.event(one);
    if (!event) return true;
    if (writing.fault()) return false;
    const QByteArray bytes = QJsonDocument(*event).toJson(QJsonDocument::Compact);
    return sink((events++ == 0 ? "\n" : ",\n") + bytes);
  });
  if (!told) return tl::unexpected(told.error());
  if (writing.fault()) return tl::unexpected(*writing.fault());
  if (*told) sink("\n]}}\n");
  return events;
}

}  // namespace lardiner::ledger
