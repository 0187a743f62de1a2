// lardiner pin: who may sign in to the station.
#include "command/pin.h"

#include <termios.h>
#include <unistd.h>

#include <QDir>
#include <QFileInfo>
#include <QTextStream>
#include <cstdio>

#include "command/commands.h"
#include "command/files.h"
#include "command/ledger_run.h"
#include "command/output.h"
#include "station/visit.h"

namespace lardiner::command {

using problem::Code;
using problem::Error;

namespace {

Error nobody(const QString& initials) {
  return {Code::Unknown,
          QStringLiteral("\"%1\" are the initials of nobody in the book").arg(initials),
          {},
          QStringLiteral("add the person to the kitchen book: [[person]]")};
}

// One line of standard input. At a terminal it is asked for, and what is typed is not shown.
QString asked_for(const QString& question) {
  termios shown{};
  const bool terminal = isatty(STDIN_FILENO) != 0 && tcgetattr(STDIN_FILENO, &shown) == 0;
  if (terminal) {
    termios hidden = shown;
    hidden.c_lflag &= ~static_cast<tcflag_t>(ECHO);
    tcsetattr(STDIN_FILENO, TCSAFLUSH, &hidden);
    std::fputs(question.toUtf8().constData(), stderr);
  }
  const QString line = QTextStream(stdin).readLine();
  if (terminal) {
    tcsetattr(STDIN_FILENO, TCSAFLUSH, &shown);
    std::fputc('\n', stderr);
  }
  return line;
}

}  // namespace

problem::Expected<station::Pins> open_pins(const Options& options, const book::Kitchen& kitchen, const QString& named) {
  make_ledger_folder(options);
  const QFileInfo ledger(ledger_path(options, kitchen));
  return station::Pins::at(named.isEmpty() ? ledger.dir().filePath(ledger.completeBaseName() + QStringLiteral(".pins"))
                                           : named);
}

ExitStatus set_pin(const Options& options, const PinOptions& wish) {
  const auto book = usable_book(options);
  if (!book) return refuse(book.error(), options.json);
  if (!wish.remove && !station::is_of_kitchen(*book, wish.initials))
    return refuse({nobody(wish.initials)}, options.json);
  auto pins = open_pins(options, book->kitchen, wish.pins);
  if (!pins) return refuse({pins.error()}, options.json);
  if (wish.remove) {
    const auto removed = pins->forget(wish.initials);
    if (!removed) return refuse({removed.error()}, options.json);
    return reported(
        print(QString::fromLatin1(*removed ? "the PIN of %1 is taken out\n" : "%1 had no PIN\n").arg(wish.initials)),
        kDone);
  }
  const QString what = wish.strong ? QStringLiteral("the strong word") : QStringLiteral("the PIN");
  const QString secret = asked_for(QStringLiteral("%1 of %2: ").arg(what, wish.initials));
  const auto set = wish.strong ? pins->set_strong(wish.initials, secret) : pins->set(wish.initials, secret);
  if (!set) return refuse({set.error()}, options.json);
  return reported(print(QStringLiteral("%1 of %2 is set\n").arg(what, wish.initials)), kDone);
}

}  // namespace lardiner::command
