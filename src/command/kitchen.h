// Everything a command works on: the book with its rules, the words, the label templates, the faces.
#pragma once

#include <QDateTime>
#include <QString>
#include <optional>
#include <vector>

#include "book/book.h"
#include "paper/face.h"
#include "paper/template.h"
#include "problem/error.h"
#include "words/words.h"

namespace lardiner::command {

/// What every command is told.
struct Options {
  QString kitchen = QStringLiteral(".");  ///< folder of the book
  QString data;                           ///< folder with templates/ and fonts/
  QString ledger;                         ///< --ledger; empty: the kitchen's own, of its station
  QString at;                             ///< --at as written; empty: the clock
  bool json = false;
  int threads = 1;  ///< that make the codes of labels; what is written is the same with any number
};

/// The book as read, faulty or not.
problem::ExpectedAll<book::Reading> read_kitchen_book(const Options& options);

/// A book without errors, or its errors. Gaps stay: they refuse only what they touch.
problem::ExpectedAll<book::Book> usable_book(const Options& options);

/// The time of the run: `--at` in the kitchen's zone, else the clock.
problem::Expected<QDateTime> time_of_run(const Options& options, const QTimeZone& zone);

/// The language packs: templates/words, and those of the kitchen's own templates/words, which take their place.
problem::ExpectedAll<std::vector<words::Language>> read_languages(const Options& options);

/// The label templates that there are, shipped or the kitchen's own, without ".toml".
QStringList template_names(const Options& options);

/// The template of a label ("inside", "finisher", "sale", "pad", "hold"): the kitchen's own templates/labels, else the
/// shipped one.
problem::ExpectedAll<paper::LabelTemplate> read_template(const Options& options, const QString& name);

/// What is wrong with a `--medium` that the book does not have.
std::optional<problem::Error> unknown_medium(const book::Book& book, const QString& id);

/// A product that a command names. Errors: Unknown, with the nearest.
problem::Expected<const book::Product*> product_named(const book::Book& book, const QString& id);

problem::ExpectedAll<paper::Faces> read_faces(const Options& options);

}  // namespace lardiner::command
