// Reports to standard output, problems to standard error.
#include "command/output.h"

#include <QJsonDocument>
#include <cstdio>

namespace lardiner::command {

bool print(const QString& text) {
  const QByteArray bytes = text.toUtf8();
  const size_t size = static_cast<size_t>(bytes.size());
  return std::fwrite(bytes.constData(), 1, size, stdout) == size && std::fflush(stdout) == 0;
}

bool print(const QJsonObject& json) {
  return print(QString::fromUtf8(QJsonDocument(json).toJson(QJsonDocument::Indented)));
}

void print_problems(problem::Errors errors) {
  problem::sort(errors);
  const QByteArray bytes = problem::text(errors).toUtf8();
  std::fwrite(bytes.constData(), 1, static_cast<size_t>(bytes.size()), stderr);
}

ExitStatus reported(bool printed, ExitStatus status) {
  if (printed) return status;
  print_problems({{problem::Code::Machine,
                   QStringLiteral("the report could not be written to standard output"),
                   {},
                   QStringLiteral("see that the disk has room, or that its reader is still there")}});
  return kMachineFailed;
}

ExitStatus refuse(const problem::Errors& errors, bool as_json) {
  print_problems(errors);
  const bool printed = !as_json || print(QJsonObject{{QStringLiteral("problems"), json(errors)}});
  return reported(printed, exit_status(errors));
}

ExitStatus wrong_usage(const problem::Error& error, bool as_json) {
  const ExitStatus status = refuse({error}, as_json);
  return status == kMachineFailed ? status : kWrongUsage;
}

QJsonArray json(const problem::Errors& errors) {
  QJsonArray out;
  for (const problem::Error& error : errors) {
    out.append(QJsonObject{{QStringLiteral("file"), error.place.file},
                           {QStringLiteral("line"), error.place.line},
                           {QStringLiteral("column"), error.place.column},
                           {QStringLiteral("what"), error.what},
                           {QStringLiteral("hint"), error.hint}});
  }
  return out;
}

}  // namespace lardiner::command
