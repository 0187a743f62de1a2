// Everything a command works on: the book with its rules, the words, the label templates, the faces.
#include "command/kitchen.h"

#include <QDir>
#include <QFileInfo>
#include <map>

#include "batch/clock.h"
#include "command/files.h"
#include "reader/fields.h"
#include "reader/quote.h"
#include "words/pack.h"

namespace lardiner::command {

namespace {

using problem::Code;
using problem::Error;
using problem::Errors;

// The name of a book's file in errors: as the user would type it.
QString shown_prefix(const Options& options) {
  return options.kitchen == QLatin1String(".") ? QString() : QDir::cleanPath(options.kitchen) + u'/';
}

Error no_data(const QString& folder) {
  return {Code::Machine,
          QStringLiteral("the program's own data is not there"),
          {folder, 0, 0, {}, 1},
          QStringLiteral("install it again: share/lardiner must lie beside the program's folder")};
}

const QString kTemplates = QStringLiteral("/templates/labels");

void check_templates(const Options& options, const book::Book& book, Errors& errors) {
  const QStringList names = template_names(options);
  for (const book::Product& product : book.products)
    for (const book::ContainerSpec& container : product.containers) {
      const QString& name = container.label_template;
      if (name.isEmpty() || names.contains(name)) continue;
      const QString near = problem::nearest(name.left(64), names);
      errors.push_back({Code::Unknown, QStringLiteral("there is no label template \"%1\"").arg(name),
                        container.template_place,
                        near.isEmpty() ? QStringLiteral("the templates are: ") + names.join(QStringLiteral(", "))
                                       : QStringLiteral("did you mean \"%1\"?").arg(near)});
    }
}

}  // namespace

problem::ExpectedAll<book::Reading> read_kitchen_book(const Options& options) {
  const auto rules = read_toml_files(options.data + QStringLiteral("/templates/rules"), QStringLiteral("rules/"));
  if (!rules) return tl::unexpected(rules.error());
  if (rules->empty()) return tl::unexpected(Errors{no_data(options.data)});
  const auto files = read_toml_files(options.kitchen, shown_prefix(options));
  if (!files) return tl::unexpected(files.error());
  if (files->empty())
    return tl::unexpected(
        Errors{{Code::Missing,
                QStringLiteral("there is no kitchen book in this folder"),
                {options.kitchen, 0, 0, {}, 1},
                QStringLiteral("name the folder that holds kitchen.toml: lardiner --kitchen DIR …")}});
  book::Reading reading = book::read_book(*files, *rules);
  check_templates(options, reading.book, reading.findings.errors);
  problem::sort(reading.findings.errors);
  return reading;
}

problem::ExpectedAll<book::Book> usable_book(const Options& options) {
  auto reading = read_kitchen_book(options);
  if (!reading) return tl::unexpected(reading.error());
  if (!reading->findings.errors.empty()) return tl::unexpected(reading->findings.errors);
  return std::move(reading->book);
}

problem::Expected<QDateTime> time_of_run(const Options& options, const QTimeZone& zone) {
  if (options.at.isEmpty()) return QDateTime::currentDateTimeUtc();
  const auto refuse = [&](Error error) {
    error.what = QStringLiteral("--at: ") + error.what;
    return tl::unexpected(error);
  };
  const auto written = reader::parse_written(options.at);
  if (!written) return refuse(written.error());
  if (!written->seconds_of_day)
    return refuse({Code::Malformed,
                   QStringLiteral("\"%1\" has no time of day").arg(options.at),
                   {},
                   QStringLiteral("write it as 2026-02-28T14:30")});
  const auto instant = batch::instant(*written, zone);
  if (!instant) return refuse(instant.error());
  return *instant;
}

problem::ExpectedAll<std::vector<words::Language>> read_languages(const Options& options) {
  std::map<QString, QString> packs;  // language -> file; the kitchen's own take the place of the shipped
  for (const QString& folder :
       {options.data + QStringLiteral("/templates/words"), options.kitchen + QStringLiteral("/templates/words")})
    for (const QString& name : QDir(folder).entryList({QStringLiteral("*.toml")}, QDir::Files, QDir::Name))
      packs[QFileInfo(name).completeBaseName()] = folder + u'/' + name;
  std::vector<words::Language> languages;
  Errors errors;
  for (const auto& [code, file] : packs) {
    const auto bytes = read_file(file);
    auto language = bytes ? words::read_language(*bytes, file, code) : tl::unexpected(Errors{bytes.error()});
    if (language)
      languages.push_back(std::move(*language));
    else
      errors.insert(errors.end(), language.error().begin(), language.error().end());
  }
  if (languages.empty() && errors.empty()) errors.push_back(no_data(options.data));
  if (!errors.empty()) return tl::unexpected(errors);
  return languages;
}

QStringList template_names(const Options& options) {
  QStringList names;
  for (const QString& folder : {options.data + kTemplates, options.kitchen + kTemplates})
    for (const QString& file : QDir(folder).entryList({QStringLiteral("*.toml")}, QDir::Files, QDir::Name))
      names += QFileInfo(file).completeBaseName();
  names.removeDuplicates();
  names.sort();
  return names;
}

problem::ExpectedAll<paper::LabelTemplate> read_template(const Options& options, const QString& name) {
  const QString file = kTemplates + QStringLiteral("/%1.toml").arg(name);
  const bool own = QFileInfo::exists(options.kitchen + file);
  const QString path = (own ? options.kitchen : options.data) + file;
  if (!own && !QFileInfo::exists(path)) return tl::unexpected(Errors{no_data(path)});
  const auto bytes = read_file(path);
  if (!bytes) return tl::unexpected(Errors{bytes.error()});
  return paper::read_label_template(*bytes, path);
}

std::optional<problem::Error> unknown_medium(const book::Book& book, const QString& id) {
  if (book.medium(id)) return std::nullopt;
  QStringList known;
  for (const book::Media& medium : book.media) known << medium.id;
  return Error{Code::Unknown,
               QStringLiteral("--medium: \"%1\" is not a medium of the book").arg(id),
               {},
               QStringLiteral("its media are: ") + known.join(QStringLiteral(", "))};
}

problem::Expected<const book::Product*> product_named(const book::Book& book, const QString& id) {
  if (const book::Product* product = book.product(id)) return product;
  QStringList known;
  for (const book::Product& product : book.products) known += product.id;
  const QString near = problem::nearest(id, known);
  return tl::unexpected(Error{Code::Unknown,
                              QStringLiteral("%1 is not a product of the book").arg(reader::quoted(id)),
                              {},
                              near.isEmpty() ? QStringLiteral("write the id of a product of the book")
                                             : QStringLiteral("did you mean %1?").arg(near)});
}

problem::ExpectedAll<paper::Faces> read_faces(const Options& options) {
  auto faces = paper::Faces::load(options.data + QStringLiteral("/fonts"));
  if (!faces) return tl::unexpected(Errors{faces.error()});
  return std::move(*faces);
}

}  // namespace lardiner::command
