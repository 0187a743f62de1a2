// lardiner plan: from orders and what is on hand to what is made, pulled and bought, with every sheet of the day.
#include "command/files.h"
#include "command/output.h"
#include "command/plan_folder.h"
#include "command/plan_problems.h"
#include "command/sheet_text.h"
#include "command/stop.h"

namespace lardiner::command {

namespace {

using problem::Code;
using problem::Error;
using problem::Errors;
using problem::Expected;
using problem::ExpectedAll;

ExpectedAll<PlanTold> told(const Options& options, const WorkRun& run, const PlanOptions& wish) {
  Errors errors;
  const auto add = [&errors](const Errors& more) { errors.insert(errors.end(), more.begin(), more.end()); };
  auto orders = read_orders_file(run, wish.orders, wish.format, run.now);
  if (!orders) add(orders.error());
  auto on_hand = find_on_hand(options, wish.on_hand, run);
  if (!on_hand) add(on_hand.error());
  const Expected<int> number = wish.number.isEmpty() ? Expected<int>(1) : running_number(wish.number);
  if (!number) add({number.error()});
  if (!errors.empty()) return tl::unexpected(errors);
  return PlanTold{std::move(*orders), std::move(*on_hand), *number};
}

Error both_from_input() {
  return {Code::Conflict,
          QStringLiteral("orders and what is on hand cannot both come from standard input"),
          {},
          QStringLiteral("write one of them to a file")};
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
  const auto plan = made_plan(*run, std::move(*words));
  if (!plan) return refuse(plan.error(), options.json);
  return hand_over(options, wish, *run, *plan);
}

}  // namespace lardiner::command
