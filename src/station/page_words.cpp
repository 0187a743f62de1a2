// The words that pages choose: what is the matter with a lot, and what an item is called.
#include "station/page_words.h"

namespace lardiner::station {

using State = history::Good::State;

QString verdict_key(State state) {
  switch (state) {
    case State::Good:
      return QStringLiteral("page.good");
    case State::Past:
      return QStringLiteral("page.past");
    case State::NotReleased:
      return QStringLiteral("page.not_released");
    case State::Held:
      return QStringLiteral("page.on_hold");
    case State::Recalled:
      return QStringLiteral("page.recalled");
    case State::NoDate:
      return QStringLiteral("page.no_date");
    case State::Gone:
      return QStringLiteral("page.gone");
  }
  return QStringLiteral("page.no_date");
}

QString mark(State state) {
  switch (state) {
    case State::Good:
      return QStringLiteral("good");
    case State::NotReleased:
      return QStringLiteral("wait");
    case State::Gone:
      return QStringLiteral("gone");
    default:
      return QStringLiteral("stop");
  }
}

QString name_of(const book::Book& book, const words::Language& language, const ledger::LotName& lot) {
  const QString there = book.name_of(lot.item, language.code());
  if (!there.isEmpty()) return there;
  return lot.name.isEmpty() ? lot.item : lot.name;
}

QString name_of(const book::Book& book, const words::Language& language, const QString& item) {
  ledger::LotName named;
  named.item = item;
  return name_of(book, language, named);
}

}  // namespace lardiner::station
