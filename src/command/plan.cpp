// lardiner plan: from orders and what is on hand to what is made, pulled and bought, with every sheet of the day.
#include "command/files.h"
#include "command/on_hand_found.h"
#include "command/output.h"
#include "command/plan_folder.h"
#include "command/plan_json.h"
#include "command/plan_problems.h"
#include "command/printed_words.h"
#include "command/sheet_text.h"
#include "command/stop.h"
#include "facts/plan_sheet.h"
#include "plan/read_orders.h"

namespace lardiner::command {

namespace {

using problem::Code;
using problem::Error;
using problem::Errors;
using problem::Expected;
using problem::ExpectedAll;

constexpr size_t kMostNumber = 9999;

// What the run was told.
struct Told {
  std::vector<plan::Order> orders;
  OnHandFound on_hand;
  int number = 1;
};

ExpectedAll<std::vector<plan::Order>> orders_of(const WorkRun& run, const PlanOptions& wish) {
  const auto rows = read_rows(wish.orders, wish.format);
  if (!rows) return tl::unexpected(rows.error());
  plan::Orders read = plan::read_orders(*rows, run.book, {run.now, rows->semicolons});
  if (read.errors.empty() && run.faces) read.errors = unprintable(read.orders, *run.faces);
  if (!read.errors.empty()) return tl::unexpected(read.errors);
  return std::move(read.orders);
}

ExpectedAll<Told> told(const Options& options, const WorkRun& run, const PlanOptions& wish) {
  Errors errors;
  const auto add = [&errors](const Errors& more) { errors.insert(errors.end(), more.begin(), more.end()); };
  auto orders = orders_of(run, wish);
  if (!orders) add(orders.error());
  auto on_hand = find_on_hand(options, wish.on_hand, run);
  if (!on_hand) add(on_hand.error());
  const Expected<int> number = wish.number.isEmpty() ? Expected<int>(1) : running_number(wish.number);
  if (!number) add({number.error()});
  if (!errors.empty()) return tl::unexpected(errors);
  return Told{std::move(*orders), std::move(*on_hand), *number};
}

Error too_many(int first, size_t batches) {
  return {Code::Range,
          QStringLiteral("this plan has %1 batches, and from number %2 not all of them get a number")
              .arg(batches)
              .arg(first),
          {},
          QStringLiteral("begin at a lower --number, or plan fewer orders at a time")};
}

Error both_from_input() {
  return {Code::Conflict,
          QStringLiteral("orders and what is on hand cannot both come from standard input"),
          {},
          QStringLiteral("write one of them to a file")};
}

ExpectedAll<Planned> planned(const WorkRun& run, Told told) {
  Planned out;
  out.plan = plan::day_plan(run.book, std::move(told.orders), std::move(told.on_hand.lots), run.now);
  out.counted = counted_text(told.on_hand, run.book.kitchen.zone);
  const size_t batches = out.plan.makings.size();
  if (static_cast<size_t>(told.number) + batches > kMostNumber + 1)
    return tl::unexpected(Errors{too_many(told.number, batches)});
  out.batches = planned_batches(run, out.plan, told.number);
  QStringList lots;
  for (const PlannedBatch& batch : out.batches) lots << batch.ahead.lot;
  auto sheet = facts::plan_sheet(run.setting(), out.plan, lots, run.now);
  if (!sheet) return tl::unexpected(sheet.error());
  out.sheet = std::move(*sheet);
  out.json = json_of(run, out.plan, out.batches);
  if (!out.counted.isEmpty()) out.json.insert(QStringLiteral("on_hand"), out.counted.trimmed());
  out.json.insert(QStringLiteral("problems"), json(unmet_problems(run.book, out.plan)));
  return out;
}

Expected<bool> put_in_place(const PlanOptions& wish, const std::vector<PlanFile>& files) {
  watch_for_stop();  // the draft does not stay behind
  auto drafts = NewFolder::beside(wish.out, NewFolder::Shape::Folder, wish.replace, plan_file_names());
  if (!drafts) return tl::unexpected(drafts.error());
  for (const PlanFile& file : files)
    if (const auto written = drafts->write(file.name, file.bytes); !written) return tl::unexpected(written.error());
  return drafts->keep();
}

bool report_files(const Options& options, const PlanOptions& wish, const Planned& planned,
                  const std::vector<PlanFile>& files) {
  QJsonObject json = planned.json;
  QString lines = planned.counted;
  QJsonArray names;
  for (const PlanFile& file : files) {
    const QString path = wish.out + u'/' + file.name;
    names.append(path);
    lines += file.counted.isEmpty() ? path + u'\n' : path + QStringLiteral(": ") + file.counted + u'\n';
  }
  json.insert(QStringLiteral("files"), names);
  return options.json ? print(json) : print(lines);
}

ExitStatus hand_over(const Options& options, const PlanOptions& wish, const WorkRun& run, const Planned& planned) {
  const Errors unmet = unmet_problems(run.book, planned.plan);
  const ExitStatus status = unmet.empty() ? kDone : kDoneInPart;
  if (wish.out.isEmpty()) {
    print_problems(unmet);
    return reported(options.json ? print(planned.json) : print(planned.counted + text(planned.sheet)), status);
  }
  const auto files = plan_files(run, planned, paper_of(wish.paper, run.book.kitchen));
  if (!files) return refuse(files.error(), options.json);
  const auto kept = put_in_place(wish, *files);
  if (!kept) return refuse({kept.error()}, options.json);
  print_problems(unmet);
  return reported(report_files(options, wish, planned, *files), status);
}

}  // namespace

ExitStatus plan_day(const Options& options, const PlanOptions& wish) {
  if (wish.orders == QLatin1String("-") && wish.on_hand == wish.orders)
    return wrong_usage(both_from_input(), options.json);
  const auto run = read_work_run(options, wish.out);
  if (!run) return refuse(run.error(), options.json);
  auto words = told(options, *run, wish);
  if (!words) return refuse(words.error(), options.json);
  const auto plan = planned(*run, std::move(*words));
  if (!plan) return refuse(plan.error(), options.json);
  return hand_over(options, wish, *run, *plan);
}

}  // namespace lardiner::command
