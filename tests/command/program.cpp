// Runs the program as a kitchen does, in a folder of its own, and the independent readers of what it wrote.
#include "program.h"

#include <QDir>
#include <QFile>
#include <QStandardPaths>

namespace lardiner::command {

namespace {

constexpr int kPatience = 120000;  // ms

}  // namespace

QByteArray bytes_of(const QString& path) {
  QFile file(path);
  INFO(path.toStdString());
  REQUIRE(file.open(QIODevice::ReadOnly));
  return file.readAll();
}

void Folder::write(const QString& name, const QByteArray& bytes) const {
  QFile file(path(name));
  REQUIRE(file.open(QIODevice::WriteOnly));
  REQUIRE(file.write(bytes) == bytes.size());
}

QByteArray Folder::read(const QString& name) const { return bytes_of(path(name)); }

QStringList Folder::entries(const QString& name) const {
  return QDir(path(name)).entryList(QDir::AllEntries | QDir::Hidden | QDir::System | QDir::NoDotAndDotDot, QDir::Name);
}

void Folder::copy_book(const QString& from, const QString& name) const {
  REQUIRE(QDir().mkpath(path(name)));
  const QStringList files = QDir(from).entryList({QStringLiteral("*.toml")}, QDir::Files);
  REQUIRE_FALSE(files.isEmpty());
  for (const QString& file : files) write(name + u'/' + file, bytes_of(from + u'/' + file));
}

void Folder::put_fault(const QString& file, const QString& text, const QString& fault) const {
  const QString whole = QString::fromUtf8(read(file));
  INFO(file.toStdString() << ": " << text.toStdString());
  REQUIRE(whole.count(text) == 1);
  write(file, QString(whole).replace(text, fault).toUtf8());
}

Ran Running::wait() {
  INFO(shown_.toStdString());
  REQUIRE(process_->waitForFinished(kPatience));
  return {process_->exitStatus() == QProcess::NormalExit ? process_->exitCode() : -1,
          QString::fromUtf8(process_->readAllStandardOutput()), QString::fromUtf8(process_->readAllStandardError())};
}

Ran Folder::run(const QString& program, const QStringList& arguments, const QByteArray& input,
                const std::vector<QPair<QString, QString>>& environment) const {
  return begin(program, arguments, input, environment).wait();
}

Running Folder::begin(const QString& program, const QStringList& arguments, const QByteArray& input,
                      const std::vector<QPair<QString, QString>>& environment) const {
  if (QStandardPaths::findExecutable(program).isEmpty())
    FAIL("samples/packages names the Debian package that brings " << program.toStdString());
  auto process = std::make_unique<QProcess>();
  QProcessEnvironment setting = QProcessEnvironment::systemEnvironment();
  for (const auto& [name, value] : environment) setting.insert(name, value);
  process->setProcessEnvironment(setting);
  process->setWorkingDirectory(dir_.path());
  process->start(program, arguments);
  process->write(input);
  process->closeWriteChannel();
  return {std::move(process), program + u' ' + arguments.join(u' ')};
}

Ran Folder::lardiner(const QStringList& arguments, const QByteArray& input,
                     const std::vector<QPair<QString, QString>>& environment) const {
  QStringList all = arguments;
  if (!all.contains(QStringLiteral("--at"))) all << QStringLiteral("--at") << QStringLiteral("2026-11-25T18:00");
  return run(QStringLiteral(LARDINER_PROGRAM), all, input, environment);
}

QString fault_text(const QString& shown_file, const QByteArray& bytes, const QString& found, const QString& what,
                   const QString& hint) {
  const QStringList lines = QString::fromUtf8(bytes).split(u'\n');
  for (qsizetype i = 0; i < lines.size(); ++i) {
    const qsizetype at = lines[i].indexOf(found);
    if (at < 0) continue;
    return QStringLiteral("%1:%2:%3: %4\n  %5\n  %6%7\n  %8\n")
        .arg(shown_file)
        .arg(i + 1)
        .arg(at + 1)
        .arg(what, lines[i], QString(at, u' '), QString(found.size(), u'^'), hint);
  }
  FAIL("\"" << found.toStdString() << "\" does not stand in " << shown_file.toStdString());
  return {};
}

}  // namespace lardiner::command
