// Fixed facts as the text that a ledger keeps: exact, readable by a person, and read back alike.
#include "batch/fixed_json.h"

#include <QJsonDocument>

#include "batch/fixed_json_record.h"

namespace lardiner::batch {

using problem::Code;

namespace {

// What is dated afterwards, and by which question.
struct ContainerFacts {
  Container container;
  std::optional<int> question;
};

// A question with the answer that was fixed: `answer` when it is written, `stated` when it is read.
struct QuestionFacts {
  Question question;
  const UseBy* answer = nullptr;
  QJsonValue stated;
};

template <class A>
void fields(A& a, Of<A, ContainerFacts>& facts) {
  a.must("number", facts.container.number);
  a.must("of", facts.container.of);
  a.usual("group", facts.container.group, 0);
  a.text("serial", facts.container.serial);
  a.usual("discarded", facts.container.discarded, false);
  a.maybe("question", facts.question);
}

void fields(Writing& a, const QuestionFacts& facts) {
  question_fields(a, facts.question);
  a.must("use_by", *facts.answer);
}

void fields(Reading& a, QuestionFacts& facts) {
  question_fields(a, facts.question);
  facts.question.zone = a.common().zone;
  facts.stated = a.raw("use_by");
}

// All that stands for itself; containers and questions are told apart.
template <class A>
void facts_fields(A& a, Of<A, Fixed>& fixed) {
  auto& batch = fixed.batch;
  a.text("name", fixed.name);
  a.usual("product", fixed.product, true);
  a.usual("tcs", fixed.tcs, true);
  a.must("record", batch.record);
  a.usual("number", batch.number, 0);
  a.text("lot", batch.lot);
  a.text("gtin", batch.gtin);
  a.must("day_one", batch.day_one);
  a.must("declared", batch.declared);
  a.must("readiness", batch.readiness);
  a.usual("previously_frozen", batch.previously_frozen, false);
  a.must("cooling", batch.cooling);
  a.list("differences", batch.differences);
  parts_field(a, batch.parts);
  a.list("warnings", batch.warnings);
  a.list("refused", batch.refused);
  a.texts("missing", batch.missing);
  a.list("carried", fixed.carried);
  a.texts("made_of", fixed.made_of);
  a.text("still", fixed.still);
  a.maybe("cooked_at", fixed.cooked_at);
  a.maybe("when_opened", fixed.when_opened);
  a.maybe("cooling_limits", fixed.cooling);
}

std::vector<ContainerFacts> containers_of(const Fixed& fixed) {
  std::vector<ContainerFacts> all;
  for (size_t i = 0; i < fixed.batch.containers.size(); ++i) {
    all.push_back({fixed.batch.containers[i], std::nullopt});
    if (!fixed.question_of.empty()) all.back().question = fixed.question_of[i];
  }
  return all;
}

std::vector<QuestionFacts> questions_of(const Fixed& fixed) {
  const std::vector<UseBy>& answers = fixed.batch.refused.empty() ? fixed.batch.use_bys : fixed.withheld;
  std::vector<QuestionFacts> all;
  for (size_t i = 0; i < fixed.questions.size(); ++i) all.push_back({fixed.questions[i], &answers[i], {}});
  return all;
}

// How a date is said in an error.
QString said(const QJsonObject& use_by) {
  const QString form = use_by.value(QLatin1String("form")).toString();
  if (form == QLatin1String("frozen"))
    return QStringLiteral("frozen with %1 days left").arg(use_by.value(QLatin1String("days_left")).toInteger());
  const QString end = use_by.value(QLatin1String(form == QLatin1String("date") ? "date" : "end")).toString();
  return end.isEmpty() ? QStringLiteral("none") : end;
}

// What two programs have to agree on: all but the wording.
QJsonObject without_wording(QJsonObject use_by) {
  QJsonArray reasons = use_by.value(QLatin1String("reasons")).toArray();
  for (qsizetype i = 0; i < reasons.size(); ++i) {
    QJsonObject reason = reasons[i].toObject();
    reason.remove(QLatin1String("rule"));
    reason.remove(QLatin1String("authority"));
    reasons[i] = reason;
  }
  use_by[QLatin1String("reasons")] = reasons;
  use_by.remove(QLatin1String("warnings"));
  return use_by;
}

QJsonObject json_of(const UseBy& use_by) {
  reader::JsonText text;
  Writing(text).put(use_by);
  return QJsonDocument::fromJson(text.bytes()).object();
}

// The answer to a question that was read, if it is the one that was fixed.
std::optional<UseBy> answer_of(const QuestionFacts& facts, bool previously_frozen, const QString& path,
                               ReadingOf& common) {
  if (!facts.stated.isObject()) {
    common.refuse(facts.stated.isUndefined() ? Code::Missing : Code::Malformed,
                  path + (facts.stated.isUndefined() ? QStringLiteral(".use_by is missing")
                                                     : QStringLiteral(".use_by is not an object")));
    return std::nullopt;
  }
  problem::ExpectedAll<UseBy> answer = use_by(facts.question);
  if (!answer) {
    common.refuse(Code::Conflict, path + QStringLiteral(" has no use-by: ") + answer.error().front().what);
    return std::nullopt;
  }
  answer->previously_frozen = answer->previously_frozen || previously_frozen;
  const QJsonObject stated = facts.stated.toObject();
  const QJsonObject now = json_of(*answer);
  if (without_wording(stated) != without_wording(now)) {
    common.refuse(
        Code::Conflict,
        QStringLiteral("%1.use_by was fixed as %2, and is counted as %3 now").arg(path, said(stated), said(now)),
        QStringLiteral("read it with the version of the program that fixed it"));
    return std::nullopt;
  }
  return std::move(*answer);
}

void check_container(const ContainerFacts& facts, size_t at, const Fixed& fixed, ReadingOf& common) {
  const QString path = QStringLiteral("facts.containers[%1].").arg(at);
  const auto range = [&](const char* key, bool right) {
    if (!right) common.refuse(Code::Range, path + QLatin1String(key) + QStringLiteral(" cannot be true"));
  };
  range("number", facts.container.number == static_cast<int>(at) + 1);
  range("group", facts.container.group >= 0 &&
                     static_cast<size_t>(facts.container.group) < fixed.batch.record.containers.size());
  if (fixed.questions.empty())
    range("question", !facts.question);
  else if (!facts.question)
    common.refuse(Code::Missing, path + QStringLiteral("question is missing"));
  else
    range("question", *facts.question >= 0 && static_cast<size_t>(*facts.question) < fixed.questions.size());
}

void take_containers(Fixed& fixed, const std::vector<ContainerFacts>& containers, ReadingOf& common) {
  const bool released = fixed.batch.refused.empty();
  for (size_t i = 0; i < containers.size() && !common.error; ++i) {
    check_container(containers[i], i, fixed, common);
    fixed.batch.containers.push_back(containers[i].container);
    if (!containers[i].question) continue;
    fixed.question_of.push_back(*containers[i].question);
    if (released) fixed.batch.containers.back().use_by = *containers[i].question;
  }
  if (containers.empty()) common.refuse(Code::Missing, QStringLiteral("facts.containers is missing"));
  if (released && fixed.questions.empty())
    common.refuse(Code::Missing, QStringLiteral("facts.questions is missing, and the lot is not refused"));
}

void take_questions(Fixed& fixed, std::vector<QuestionFacts>& questions, ReadingOf& common) {
  std::vector<UseBy>& answers = fixed.batch.refused.empty() ? fixed.batch.use_bys : fixed.withheld;
  for (size_t i = 0; i < questions.size() && !common.error; ++i) {
    const QString path = QStringLiteral("facts.questions[%1]").arg(i);
    std::optional<UseBy> answer = answer_of(questions[i], fixed.batch.previously_frozen, path, common);
    if (answer) answers.push_back(std::move(*answer));
    fixed.questions.push_back(std::move(questions[i].question));
  }
}

QTimeZone zone_of(Reading& reading) {
  QString id;
  reading.must("zone", id);
  const QTimeZone zone(id.toLatin1());
  if (!zone.isValid())
    reading.common().refuse(Code::Unknown, QStringLiteral("facts.zone is not the name of a time zone"));
  return zone;
}

}  // namespace

void write_json(reader::JsonText& text, const Fixed& fixed) {
  Writing writing(text);
  text.begin_object();
  writing.must("zone", QString::fromLatin1(fixed.batch.record.made_at.timeZone().id()));
  facts_fields(writing, fixed);
  writing.list("containers", containers_of(fixed));
  writing.list("questions", questions_of(fixed));
  text.end_object();
}

problem::Expected<Fixed> fixed_from_json(const QJsonObject& json) {
  ReadingOf common;
  const Path facts{nullptr, "facts"};
  Reading reading(json, facts, common);
  common.zone = zone_of(reading);
  Fixed fixed;
  std::vector<ContainerFacts> containers;
  std::vector<QuestionFacts> questions;
  if (!common.error) {
    facts_fields(reading, fixed);
    reading.list("containers", containers);
    reading.list("questions", questions);
    reading.end();
  }
  if (!common.error) take_questions(fixed, questions, common);
  if (!common.error) take_containers(fixed, containers, common);
  if (common.error) return tl::unexpected(*common.error);
  return fixed;
}

}  // namespace lardiner::batch
