// The writer program as a child that is read from, waited for and killed.
#include "child.h"

#include <fcntl.h>
#include <signal.h>
#include <sys/wait.h>
#include <unistd.h>

namespace lardiner::ledger {

namespace {

QByteArray read_all(int file) {
  QByteArray all;
  char bytes[4096];
  for (ssize_t got = ::read(file, bytes, sizeof bytes); got > 0; got = ::read(file, bytes, sizeof bytes))
    all.append(bytes, got);
  return all;
}

}  // namespace

Child::Child(const QStringList& arguments, const std::vector<std::pair<QByteArray, QByteArray>>& environment) {
  std::vector<QByteArray> words{QByteArray(LEDGER_WRITER)};
  for (const QString& argument : arguments) words.push_back(argument.toLocal8Bit());
  std::vector<char*> pointers;
  for (QByteArray& word : words) pointers.push_back(word.data());
  pointers.push_back(nullptr);
  int out[2], err[2];
  if (::pipe2(out, O_CLOEXEC) != 0 || ::pipe2(err, O_CLOEXEC) != 0) return;
  pid_ = ::fork();
  if (pid_ == 0) {
    ::dup2(out[1], STDOUT_FILENO);
    ::dup2(err[1], STDERR_FILENO);
    for (const auto& [name, value] : environment) ::setenv(name.constData(), value.constData(), 1);
    ::execv(pointers.front(), pointers.data());
    ::_exit(127);
  }
  ::close(out[1]);
  ::close(err[1]);
  out_ = out[0];
  err_ = err[0];
}

Child::~Child() {
  if (pid_ > 0) kill();
  if (pid_ > 0) ::waitpid(pid_, nullptr, 0);
  ::close(out_);
  ::close(err_);
}

QByteArray Child::read_lines(int lines) {
  char bytes[4096];
  while (read_.count('\n') < lines) {
    const ssize_t got = ::read(out_, bytes, sizeof bytes);
    if (got <= 0) break;
    read_.append(bytes, got);
  }
  return read_.left(read_.lastIndexOf('\n') + 1);
}

void Child::kill() { ::kill(pid_, SIGKILL); }

Child::End Child::wait() {
  End end;
  end.out = read_ + read_all(out_);
  end.err = read_all(err_);
  int status = 0;
  ::waitpid(pid_, &status, 0);
  pid_ = -1;
  end.status = WIFEXITED(status) ? WEXITSTATUS(status) : -1;
  return end;
}

qint64 acknowledged(const QByteArray& lines) {
  qint64 last = 0;
  for (const QByteArray& line : lines.left(lines.lastIndexOf('\n') + 1).split('\n'))
    if (!line.isEmpty() && line != "open") last = line.toLongLong();
  return last;
}

}  // namespace lardiner::ledger
