// lardiner export: the critical tracking events of days or of a lot's lineage, as a spreadsheet or an EPCIS document.
#include <unistd.h>

#include <QFile>

#include "command/commands.h"
#include "command/files.h"
#include "command/ledger_run.h"
#include "command/option_error.h"
#include "command/output.h"
#include "gs1/check_digit.h"
#include "ledger/export_epcis.h"
#include "ledger/export_xlsx.h"

namespace lardiner::command {

namespace {

using ledger::ExportKitchen;
using ledger::ExportScope;
using problem::Code;
using problem::Error;
using problem::Errors;

const QString kDraft = QStringLiteral("export");

Error fault(Code code, const QString& what, const QString& hint) { return {code, what, {}, hint}; }

// What the options ask for; the lot is looked up later.
problem::ExpectedAll<ExportScope> days_of(const ExportOptions& wish) {
  const bool days = !wish.from.isEmpty() || !wish.to.isEmpty();
  if (days != wish.lot.isEmpty())
    return tl::unexpected(Errors{fault(Code::Malformed, QStringLiteral("neither days nor a lot, or both"),
                                       QStringLiteral("say --from and --to, or --lot"))});
  if (wish.lot.isEmpty() && !wish.item.isEmpty())
    return tl::unexpected(Errors{fault(Code::Malformed, QStringLiteral("--item tells of which item --lot is"),
                                       QStringLiteral("say --lot as well, or leave it out"))});
  if (!days) return ExportScope{};
  Errors errors;
  const auto day = [&](const QString& option, const QString& text) {
    const QDate date = QDate::fromString(text, QStringLiteral("yyyy-MM-dd"));
    if (!date.isValid())
      errors.push_back(fault(Code::Malformed, QStringLiteral("%1: \"%2\" is not a day").arg(option, text),
                             QStringLiteral("write it as 2026-02-28")));
    return date;
  };
  const ExportScope scope{day(QStringLiteral("--from"), wish.from), day(QStringLiteral("--to"), wish.to), {}};
  if (errors.empty() && scope.from > scope.to)
    errors.push_back(fault(Code::Range, QStringLiteral("--to: %1 is before %2").arg(wish.to, wish.from),
                           QStringLiteral("the first day comes first")));
  if (!errors.empty()) return tl::unexpected(errors);
  return scope;
}

ExportKitchen kitchen_of(const book::Book& book) {
  const book::Kitchen& kitchen = book.kitchen;
  ExportKitchen out{
      kitchen.name, kitchen.address.join(QStringLiteral(", ")), kitchen.code_address, kitchen.units, {}, {}};
  const QString& language = kitchen.languages.front();
  for (const book::Ingredient& item : book.ingredients) out.items.insert(item.id, item.name.in(language));
  for (const book::Product& item : book.products) {
    out.items.insert(item.id, item.name.in(language));
    if (const auto gtin = gs1::gtin14(kitchen.gtin_prefix, item.item_number)) out.gtins.insert(item.id, *gtin);
  }
  for (const book::Site& site : book.sites) out.sites.insert(site.id, site.name.in(language));
  return out;
}

Error not_written(const QString& path, const QString& why) {
  return {Code::Machine,
          QStringLiteral("the file could not be written; nothing was (%1)").arg(why),
          {path, 0, 0, {}, 1, 1},
          QStringLiteral("see that the disk has room and that the folder may be written")};
}

using Write = std::function<problem::Expected<qint64>(const ledger::Sink&)>;

// A file that is written in large pieces, and then down to the disk.
class Pieces {
 public:
  explicit Pieces(const QString& path)
      : file_(path), good_(file_.open(QIODeviceBase::WriteOnly | QIODeviceBase::Unbuffered)) {}

  /// False once the disk has refused.
  bool add(const QByteArray& bytes) {
    waiting_ += bytes;
    return waiting_.size() < kPiece ? good_ : write();
  }
  bool end() { return write() && ::fsync(file_.handle()) == 0; }
  QString why() const { return file_.errorString(); }

 private:
  static constexpr qsizetype kPiece = 1 << 16;

  // A disk that fills up takes a part first: only the next write tells why.
  bool write() {
    for (qint64 done = 0, more = 0; good_ && done < waiting_.size(); done += more) {
      more = file_.write(waiting_.constData() + done, waiting_.size() - done);
      good_ = more > 0;
    }
    waiting_.clear();
    return good_;
  }

  QFile file_;
  bool good_;
  QByteArray waiting_;
};

problem::Expected<qint64> write_pieces(const NewFolder& drafts, const QString& shown, const Write& write) {
  Pieces file(drafts.draft_of(kDraft));
  const auto written = write([&](const QByteArray& bytes) { return file.add(bytes); });
  if (!written) return written;
  if (!file.end()) return tl::unexpected(not_written(shown, file.why()));
  return written;
}

problem::Expected<qint64> write_sheet(const NewFolder& drafts, const QString& shown,
                                      const std::function<problem::Expected<qint64>(const QString&)>& write) {
  auto written = write(drafts.draft_of(kDraft));
  if (!written && written.error().place.file == drafts.draft_of(kDraft)) written.error().place.file = shown;
  return written;
}

// What is being exported, and where to.
struct Job {
  LedgerRun run;
  ExportScope scope;
  ExportKitchen kitchen;
};

problem::ExpectedAll<Job> job_of(const Options& options, const ExportOptions& wish, ExportScope scope) {
  auto run = read_ledger_run(options, ledger::Access::Read);
  if (!run) return tl::unexpected(run.error());
  if (!wish.lot.isEmpty()) {
    const auto lot = lot_named(run->ledger, wish.lot, wish.item);
    if (!lot) return tl::unexpected(Errors{lot.error()});
    scope.lot = lot->id;
  }
  ExportKitchen kitchen = kitchen_of(run->book);
  return Job{std::move(*run), scope, std::move(kitchen)};
}

using Export = std::function<problem::Expected<qint64>(Job&, const NewFolder&)>;

ExitStatus report(const Options& options, const ExportOptions& wish, const char* counted, qint64 count) {
  const QString what = QLatin1String(counted);
  return reported(options.json ? print(QJsonObject{{QStringLiteral("file"), wish.out}, {what, count}})
                               : print(QStringLiteral("%1: %2 %3\n").arg(wish.out).arg(count).arg(what)),
                  kDone);
}

ExitStatus export_as(const Options& options, const ExportOptions& wish, const char* counted, const Export& write) {
  const auto scope = days_of(wish);
  if (!scope) {
    print_problems(Errors(scope.error().begin(), scope.error().end() - 1));
    return wrong_usage(scope.error().back(), options.json);
  }
  auto job = job_of(options, wish, *scope);
  if (!job) return refuse(job.error(), options.json);
  auto drafts = NewFolder::beside(wish.out, NewFolder::Shape::OneFile, wish.replace);
  if (!drafts) return refuse({drafts.error()}, options.json);
  const auto written = write(*job, *drafts);
  if (!written) return refuse({written.error()}, options.json);
  if (const auto kept = drafts->keep_only(kDraft); !kept) return refuse({kept.error()}, options.json);
  return report(options, wish, counted, *written);
}

ExitStatus other_name(const Options& options, const ExportOptions& wish, const QString& names) {
  return wrong_usage(fault(Code::Malformed, QStringLiteral("--out: \"%1\" is no %2").arg(wish.out, names),
                           QStringLiteral("name a %1").arg(names)),
                     options.json);
}

}  // namespace

ExitStatus export_spreadsheet(const Options& options, const ExportOptions& wish) {
  const bool sheet = wish.out.endsWith(QLatin1String(".xlsx"));
  if (!sheet && !wish.out.endsWith(QLatin1String(".csv")))
    return other_name(options, wish, QStringLiteral(".csv or .xlsx"));
  return export_as(options, wish, "rows", [&](Job& job, const NewFolder& drafts) {
    if (sheet)
      return write_sheet(drafts, wish.out, [&](const QString& path) {
        return ledger::write_xlsx(job.run.ledger, job.scope, job.kitchen, path);
      });
    return write_pieces(drafts, wish.out, [&](const ledger::Sink& sink) {
      return ledger::write_csv(job.run.ledger, job.scope, job.kitchen, sink);
    });
  });
}

ExitStatus export_epcis(const Options& options, const ExportOptions& wish) {
  if (!wish.out.endsWith(QLatin1String(".jsonld"))) return other_name(options, wish, QStringLiteral(".jsonld"));
  return export_as(options, wish, "events", [&](Job& job, const NewFolder& drafts) {
    return write_pieces(drafts, wish.out, [&](const ledger::Sink& sink) {
      return ledger::write_epcis(job.run.ledger, job.scope, job.kitchen, job.run.now, sink);
    });
  });
}

}  // namespace lardiner::command
