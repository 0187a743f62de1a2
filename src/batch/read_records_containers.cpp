// Groups of containers, as a cell of a spreadsheet or as tables of JSON.
#include <QRegularExpression>

#include "batch/read_records_walk.h"
#include "reader/quote.h"

namespace lardiner::batch {

using problem::Code;
using reader::Fields;
using reader::quoted;

const QStringList& container_kinds() {
  static const QStringList all{QStringLiteral("tub"),   QStringLiteral("tray"), QStringLiteral("bag"),
                               QStringLiteral("case"),  QStringLiteral("jar"),  QStringLiteral("pan"),
                               QStringLiteral("bottle")};
  return all;
}

namespace {

constexpr int kMostContainers = 9999;

problem::Expected<ContainerGroup> group_of(const QString& text, const Reading& reading) {
  static const QRegularExpression pattern(QStringLiteral(R"(\A([0-9]+)\s+(\S+)\s+(.+)\z)"));
  const QRegularExpressionMatch match = pattern.match(text);
  if (!match.hasMatch())
    return tl::unexpected(problem::Error{
        Code::Malformed,
        QStringLiteral("%1 is not a number of containers, their kind and what each holds").arg(quoted(text)),
        {},
        QStringLiteral("write it as 24 tub 500 g, or 24 tub 500 g + 1 tub 300 g")});
  const int count = match.captured(1).size() > 4 ? kMostContainers + 1 : match.captured(1).toInt();
  if (count < 1 || count > kMostContainers)
    return tl::unexpected(
        problem::Error{Code::Range,
                       QStringLiteral("%1 is not a number of containers").arg(quoted(match.captured(1))),
                       {},
                       QStringLiteral("write a whole number from 1 to %1").arg(kMostContainers)});
  if (!container_kinds().contains(match.captured(2)))
    return tl::unexpected(
        problem::Error{Code::Unknown,
                       QStringLiteral("%1 is not a kind of container").arg(quoted(match.captured(2))),
                       {},
                       did_you_mean(match.captured(2), container_kinds(),
                                    QStringLiteral("write one of ") + container_kinds().join(QStringLiteral(", ")))});
  const problem::Expected<measure::Quantity> holds = amount_of(match.captured(3), reading);
  if (!holds) return tl::unexpected(holds.error());
  return ContainerGroup{count, match.captured(2), *holds, {}};
}

}  // namespace

problem::ExpectedAll<std::vector<ContainerGroup>> parse_containers(const QString& text, const Reading& reading) {
  std::vector<ContainerGroup> groups;
  problem::Errors errors;
  for (const QString& part : text.split(u'+')) {
    const problem::Expected<ContainerGroup> group = group_of(part.trimmed(), reading);
    if (group)
      groups.push_back(*group);
    else
      errors.push_back(group.error());
  }
  if (!errors.empty()) return tl::unexpected(errors);
  return groups;
}

void check_kind(const book::Product& product, const ContainerGroup& group, problem::Errors& errors) {
  if (product.containers.empty()) return;
  QStringList kinds;
  for (const book::ContainerSpec& spec : product.containers)
    if (!kinds.contains(spec.kind)) kinds += spec.kind;
  if (kinds.contains(group.kind)) return;
  errors.push_back(
      {Code::Unknown, QStringLiteral("%1 is not put up in a %2 by the book").arg(quoted(product.id), group.kind),
       group.place,
       QStringLiteral("it has: %1; or add the container to the book").arg(kinds.join(QStringLiteral(", ")))});
}

std::vector<ContainerGroup> containers_of(Fields& fields, QStringView key, const Reading& reading) {
  const std::optional<QString> text = fields.text(key);
  if (!text) return {};
  auto groups = parse_containers(*text, reading);
  if (!groups) {
    for (const problem::Error& error : groups.error()) fields.refuse(key, error.code, error.what, error.hint);
    return {};
  }
  for (ContainerGroup& group : *groups) group.place = place_of(fields, key);
  return std::move(*groups);
}

std::vector<ContainerGroup> read_containers(const WrittenPart& part, const Reading& reading) {
  PartWalk walk(part, QStringLiteral("the container group"));
  if (part.row && walk.fields.has(u"containers")) {
    std::vector<ContainerGroup> groups = containers_of(walk.fields, u"containers", reading);
    walk.finish();
    return groups;
  }
  if (part.row) {
    require(walk.fields, u"containers", QStringLiteral("write them as 24 tub 500 g"));
    walk.finish();
    return {};
  }
  require(walk.fields, u"count", QStringLiteral("write how many, from 1 to %1").arg(kMostContainers));
  const std::optional<int> count = walk.fields.integer(u"count", 1, kMostContainers);
  require(walk.fields, u"kind", QStringLiteral("write one of ") + container_kinds().join(QStringLiteral(", ")));
  const std::optional<QString> kind = read_word(walk.fields, u"kind", container_kinds());
  const std::optional<measure::Quantity> holds = read_required_amount(walk.fields, u"holds", reading);
  const problem::Place place = place_of(walk.fields, u"count");
  if (!walk.finish() || !count || !kind || !holds) return {};
  return {ContainerGroup{*count, *kind, *holds, place}};
}

}  // namespace lardiner::batch
