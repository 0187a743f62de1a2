// The station's desk over a kitchen.
#include "command/kitchen_desk.h"

#include <QRegularExpression>
#include <algorithm>

#include "batch/lot.h"
#include "command/date_text.h"
#include "command/due_json.h"
#include "command/entry_text.h"
#include "command/food_warnings.h"
#include "command/label_bytes.h"
#include "command/late_warnings.h"
#include "command/lineage_file.h"
#include "command/lot_report.h"
#include "command/lot_standing.h"
#include "command/place_warnings.h"
#include "command/print_desk.h"
#include "command/reached.h"
#include "command/recall_of_ledger.h"
#include "command/recording.h"
#include "command/scanned.h"
#include "command/sheet_desk.h"
#include "command/work_document.h"
#include "command/work_run.h"
#include "facts/allergen_text.h"
#include "ledger/entries.h"
#include "ledger/lineage.h"
#include "scan/child.h"

namespace lardiner::command {

using problem::Code;
using problem::Errors;
using station::Foreseen;
using station::Opened;
using station::Printed;
using station::Recorded;

namespace {

constexpr int kMostNumber = 9999;  // of a batch (RECORDS.md)
constexpr int kPictureSeconds = 10;

class KitchenDesk : public station::Desk {
 public:
  KitchenDesk(const Options& options, const QString& program, PrintDesk printing, KeptBook& kept, KeptPlan& plan,
              std::shared_ptr<const TakenBook> taken, LedgerRun run, paper::Faces faces)
      : options_(options),
        program_(program),
        printing_(std::move(printing)),
        kept_(kept),
        plan_(plan),
        taken_(std::move(taken)),
        run_(std::move(run)),
        faces_(std::move(faces)) {}

  void begin() override {
    if (auto taken = kept_.now(); taken != taken_) take(std::move(taken));
    if (options_.at.isEmpty()) run_.now = QDateTime::currentDateTimeUtc();
    run_.ledger.store().forget_fault();
    run_.ledger.lots().refresh();
    look_at_clock();
  }
  const book::Book& book() const override { return run_.book; }
  const std::optional<problem::Error>& book_fault() const override { return taken_->fault; }
  ledger::Ledger& ledger() override { return run_.ledger; }
  QDateTime now() const override { return run_.now; }
  const std::optional<QDateTime>& recorded_after() const override { return recorded_after_; }
  const std::vector<words::Language>& languages() const override { return taken_->languages; }

  QStringList history(const ledger::LotName& lot) override {
    QStringList lines;
    const auto entries = ledger::entries_of_lot(run_.ledger.store(), lot.id);
    if (!entries) return {entries.error().what};
    for (const ledger::Recorded& recorded : *entries)
      lines << (recorded.entry.event.kind == history::Kind::Made ? made_line(recorded.entry)
                                                                 : entry_line(recorded.entry, run_.zone()));
    return lines;
  }

  int next_number(const QString& letters, QDate day) override {
    for (int number = 1; number <= kMostNumber && !letters.isEmpty(); ++number)
      if (run_.ledger.lots().named(batch::lot(run_.book.kitchen, day, letters, number)).empty()) return number;
    return 0;
  }

  problem::Expected<QJsonObject> lot_as_json(const ledger::LotName& lot) override {
    const auto report = lot_report(run_, lot);
    if (!report) return tl::unexpected(report.error());
    return json_of(run_, *report, {});
  }
  problem::Expected<QJsonObject> due_as_json(int days) override {
    const auto found = ledger::due(run_.ledger.store(), run_.now, run_.zone(), days);
    if (!found) return tl::unexpected(found.error());
    return due_json(run_, *found);
  }

  problem::ExpectedAll<facts::WorkSheet> recall_sheet(const ledger::LotName& lot,
                                                      const words::Language& language) override {
    return recall_in({run_.book, {&language}}, lot);
  }
  problem::ExpectedAll<QByteArray> recall_pdf(const ledger::LotName& lot) override {
    const auto languages = facts::sheet_languages(kept_.packs(), run_.book.kitchen);
    if (!languages) return tl::unexpected(languages.error());
    return on_paper(recall_in({run_.book, *languages}, lot));
  }

  problem::ExpectedAll<facts::WorkSheet> sheet(const station::SheetWish& wish,
                                               const words::Language& language) override {
    return sheet_for(options_, wish, language.code());
  }
  problem::ExpectedAll<QByteArray> sheet_pdf(const station::SheetWish& wish) override {
    return on_paper(sheet_for(options_, wish, {}));
  }
  std::shared_ptr<const station::PlanShown> plan() override { return plan_.now(taken_, run_); }
  problem::ExpectedAll<QByteArray> plan_pdf() override { return plan_.pdf(options_); }
  problem::ExpectedAll<QByteArray> lineage_picture(const ledger::LotName& lot) override {
    const auto traced = traced_lot(run_, lot.id);
    if (!traced) return tl::unexpected(Errors{traced.error()});
    return lineage_svg(options_, *traced);
  }

  Opened open(const QString& text, const QString& item) override {
    const Scanned what = scanned(run_, text, item);
    Opened out{what.what, {}, {}, what.container, {}};
    if (what.several) out.what = what.several->what + QStringLiteral(": ") + what.several->hint;
    if (!what.lot) return out;
    out.lot = what.lot->code;
    out.item = what.lot->item;
    const bool label = what.container.has_value();
    const history::Lot* lot = label ? run_.ledger.lots().lot(what.lot->id) : nullptr;
    if (lot) out.superseded = superseded(run_, *lot, {what.container, what.label_end, true});
    return out;
  }

  problem::Expected<QStringList> codes(const QByteArray& bytes, const QString& name) override {
    scan::Bounds bounds;
    bounds.seconds = kPictureSeconds;
    const scan::Child child{program_, {QStringLiteral("read-codes")}};
    const auto found = scan::read_codes_in_child(child, bytes, name, bounds);
    if (!found) return tl::unexpected(found.error());
    QStringList texts;
    for (const scan::Code& code : found->codes) texts << code.text;
    return texts;
  }

  problem::ExpectedAll<Recorded> record(const std::vector<reader::Value>& rows) override { return append(rows, false); }
  problem::ExpectedAll<Recorded> record_on_hold(const reader::Value& row) override { return append({row}, true); }

  problem::ExpectedAll<Foreseen> foresee(const reader::Value& row) override {
    Recording recorded = recording(run_, {row}, false, true);
    const auto made = std::find_if(recorded.events.begin(), recorded.events.end(),
                                   [](const history::Event& event) { return event.made.has_value(); });
    if (made == recorded.events.end()) return tl::unexpected(recorded.errors);
    Foreseen out;
    if (const auto behind = run_.ledger.clock_behind(run_.now)) {
      out.refused.push_back(*behind);
      return out;
    }
    out.refused = recorded.errors;
    const Errors& held = made->made->batch.refused;  // its cooling is still to be shown, or more is missing
    out.refused.insert(out.refused.end(), held.begin(), held.end());
    for (const QString& warning : recorded.warnings) out.warnings << warning;
    add_facts(*made->made, out);
    return out;
  }

  problem::ExpectedAll<Printed> labels(const station::ToPrint& wish) override {
    if (const auto behind = run_.ledger.clock_behind(run_.now)) return tl::unexpected(Errors{*behind});
    if (const auto error = wish.medium.isEmpty() ? std::nullopt : unknown_medium(run_.book, wish.medium))
      return tl::unexpected(Errors{*error});
    const auto file = print_lot(options_, run_.book, kept_.packs(), run_.now,
                                {wish.lot, wish.containers, wish.medium, wish.by, wish.hold, {}});
    if (!file) return tl::unexpected(file.error());
    return Printed{file->medium, file->labels, file->pdf};
  }

  problem::Expected<std::vector<station::PrinterShown>> printers() override { return printing_.printers(run_); }
  problem::ExpectedAll<QString> ask_print(const station::ToPrint& wish, const QString& printer, int copies) override {
    return printing_.ask(run_, kept_.packs(), wish, printer, copies);
  }
  problem::Expected<std::vector<station::PrintShown>> open_prints() override { return printing_.open(run_); }
  problem::Expected<std::optional<station::PrintShown>> print(const QString& id) override {
    return printing_.print(run_, id);
  }
  problem::ExpectedAll<QString> end_print(const station::PrintEnd& end) override { return printing_.end(run_, end); }
  problem::ExpectedAll<bool> print_test_label(const QString& printer, const QString& medium) override {
    return printing_.print_test_label(run_, printer, medium);
  }
  problem::ExpectedAll<bool> medium_loaded(const QString& printer, const QString& medium, const QString& by) override {
    return printing_.medium_loaded(run_, printer, medium, by);
  }

 private:
  problem::ExpectedAll<QByteArray> on_paper(const problem::ExpectedAll<facts::WorkSheet>& sheet) const {
    if (!sheet) return tl::unexpected(sheet.error());
    auto document = work_document({*sheet}, paper_of({}, run_.book.kitchen), faces_, sheet->running);
    if (!document) return tl::unexpected(document.error());
    return std::move(document->pdf);
  }

  problem::ExpectedAll<Recorded> append(const std::vector<reader::Value>& rows, bool hold) {
    const auto appended = append_rows(run_, rows, false, hold);
    if (!appended) {
      run_.ledger.store().forget_fault();  // the page that says so is read all the same
      return tl::unexpected(appended.error());
    }
    Recorded out;
    for (const history::Entry& entry : appended->entries) {
      out.entries << entry.id.text();
      if (!entry.event.lot.isEmpty()) out.lot = entry.event.lot;
    }
    for (const QString& warning : appended->warnings) out.warnings << warning;
    for (const Errors& warnings : {place_warnings(run_, appended->entries), food_warnings(run_, appended->entries),
                                   late_warnings(run_, appended->entries)})
      for (const problem::Error& warning : warnings) out.warnings << on_page(warning);
    out.warnings << calls_to_sites(run_, appended->entries) << reached_nothing(run_, appended->entries);
    for (const history::Entry& entry : appended->entries) {
      const std::vector<ledger::LotName> lots = ledger::lots_concerned(run_.ledger.store(), entry.id);
      out.concerned.insert(out.concerned.end(), lots.begin(), lots.end());
    }
    return out;
  }

  // Nobody at a page writes rows of events.
  static QString on_page(const problem::Error& warning) {
    static const QRegularExpression row(QStringLiteral(" \\(event=[^)]*\\)"));
    QString text = warning.what + QStringLiteral(": ") + warning.hint;
    if (text.startsWith(QLatin1String("warning: "))) text.remove(0, 9);
    return text.remove(row);
  }

  void take(std::shared_ptr<const TakenBook> taken) {
    taken_ = std::move(taken);
    run_.book = taken_->book;
    if (const auto now = time_of_run(options_, run_.zone())) run_.now = *now;
    said.forget();
  }

  void look_at_clock() {
    if (const qint64 changes = run_.ledger.lots().changes(); changes != changes_) {
      last_recorded_ = run_.ledger.last_recorded();
      if (!run_.ledger.store().fault()) changes_ = changes;
    }
    recorded_after_.reset();
    if (last_recorded_.toSecsSinceEpoch() > run_.now.toSecsSinceEpoch()) recorded_after_ = last_recorded_;
  }

  problem::ExpectedAll<facts::WorkSheet> recall_in(const facts::SheetSetting& setting, const ledger::LotName& lot) {
    const auto recall = recall_of({run_.book, run_.ledger, run_.now, setting.languages.front()->code()}, lot.id);
    if (!recall) return tl::unexpected(recall.error());
    return facts::recall_sheet(setting, *recall);
  }

  QString made_line(const history::Entry& entry) const {
    return QStringLiteral("%1  %2  made, %3")
        .arg(entry.id.text(), moment(entry.event.at, false, run_.zone()), entry.event.by);
  }

  std::vector<station::Replaced> replaced(const batch::Batch& batch) const {
    const book::AllergenList* list = run_.book.law.list(run_.book.kitchen.allergen_list);
    const facts::Wording wording{languages().front(), run_.book.kitchen.units};
    std::vector<station::Replaced> all;
    for (const batch::Difference& one : batch.differences) {
      const auto adds = list ? facts::in_contains(one.adds, *list) : std::vector<book::ListedAllergen>();
      const QString named = wording.words.upper(facts::entries_text(wording, adds));
      all.push_back({one.item, one.instead_of,
                     adds.empty() ? QString() : wording.words.sentence(QStringLiteral("substitution_adds"), {named})});
    }
    return all;
  }

  void add_facts(const batch::Fixed& fixed, Foreseen& out) const {
    const batch::Batch& batch = fixed.batch;
    out.lot = batch.lot;
    if (const batch::UseBy* use_by = batch::use_by_of(fixed, 0)) {
      out.use_by = headline(*use_by, run_.zone());
      for (const batch::Reason& reason : use_by->reasons) out.reasons << reason_line(reason, run_.zone()).trimmed();
    }
    if (const book::AllergenList* list = run_.book.law.list(run_.book.kitchen.allergen_list);
        list && batch.declared.stated) {
      const facts::Wording wording{taken_->languages.front(), run_.book.kitchen.units};
      out.contains << facts::contains_text(wording, batch.declared, *list);
      if (const QString may = facts::may_contain_text(wording, batch.declared, *list); !may.isEmpty())
        out.contains << may;
    }
    out.differences = replaced(batch);
    const auto runs = facts::label_runs(run_.book, batch, kept_.packs(), {});
    if (!runs || runs->empty()) return;
    if (const auto picture = label_picture(options_, run_.book, runs->front(), faces_)) out.label_svg = *picture;
  }

  const Options options_;
  const QString program_;
  const PrintDesk printing_;
  KeptBook& kept_;
  KeptPlan& plan_;
  std::shared_ptr<const TakenBook> taken_;
  LedgerRun run_;
  qint64 changes_ = -1;  // of the ledger, when its last entry was looked at
  QDateTime last_recorded_;
  std::optional<QDateTime> recorded_after_;
  paper::Faces faces_;
};

}  // namespace

problem::ExpectedAll<std::unique_ptr<station::Desk>> kitchen_desk(const Options& options, const QString& program,
                                                                  KeptBook& book, KeptPlan& plan,
                                                                  const std::vector<NamedPrinter>& printers,
                                                                  PrintBoard& board) {
  auto taken = book.now();
  auto run = ledger_run(options, taken->book, ledger::Access::Write);
  if (!run) return tl::unexpected(run.error());
  auto faces = read_faces(options);
  if (!faces) return tl::unexpected(faces.error());
  return std::unique_ptr<station::Desk>(
      std::make_unique<KitchenDesk>(options, program, PrintDesk(options, printers, board), book, plan, std::move(taken),
                                    std::move(*run), std::move(*faces)));
}

}  // namespace lardiner::command
