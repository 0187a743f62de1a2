// Whether the entries are those that were recorded: the chains walked, each hash computed anew.
#include "ledger/verify.h"

#include "ledger/chain.h"

namespace lardiner::ledger {

namespace {

class Walking {
 public:
  Walking(Store& store, const std::optional<Head>& known) : store_(store), known_(known) {}

  Verified walk() {
    for (const Chain& chain : chains()) walk(chain);
    look_for_strays();
    if (known_ && !seen_)
      result_.broken.push_back(
          {known_->station, known_->count, QStringLiteral("it is not there: the chain is shorter")});
    return std::move(result_);
  }

 private:
  struct Chain {
    qint64 id;
    Head stated;
  };

  std::vector<Chain> chains() {
    std::vector<Chain> chains;
    Statement& rows = store_.statement("SELECT id, station, count, head FROM chain ORDER BY station");
    while (rows.next()) chains.push_back({rows.number(0), {rows.text(1), rows.number(2), rows.bytes(3)}});
    return chains;
  }

  // Whoever takes a chain out of the list of chains takes no entry out of the file.
  void look_for_strays() {
    Statement& row = store_.statement("SELECT count(*) FROM event WHERE chain NOT IN (SELECT id FROM chain)");
    const qint64 strays = row.one() ? row.number(0) : 0;
    row.end();
    if (strays > 0)
      result_.broken.push_back({{}, 0, QStringLiteral("%1 entries are of no station's chain").arg(strays)});
  }

  void walk(const Chain& chain) {
    Head at{chain.stated.station, 0, no_hash()};
    Statement& rows =
        store_.statement("SELECT number, hash, CAST(body AS BLOB), seq FROM event WHERE chain = ? ORDER BY number")
            .with(chain.id);
    QString fault;
    qint64 before = 0;  // its place in the file
    while (fault.isEmpty() && rows.next()) {
      if (rows.number(3) < before) fault = QStringLiteral("it stands before the entry that it follows");
      if (fault.isEmpty()) fault = step(at, rows.number(0), rows.bytes(1), rows.bytes(2));
      before = rows.number(3);
    }
    rows.end();
    const bool shorter = fault.isEmpty() && at.count != chain.stated.count;
    if (shorter) fault = QStringLiteral("it is not there: the chain should have %1 entries").arg(chain.stated.count);
    if (fault.isEmpty() && at.hash != chain.stated.hash)
      fault = QStringLiteral("the chain's own record of its end does not agree with it");
    if (!fault.isEmpty())
      result_.broken.push_back({at.station, at.count + (shorter || at.count < chain.stated.count ? 1 : 0), fault});
    result_.entries += at.count;
    result_.heads.push_back(std::move(at));
  }

  // What is wrong with the next entry; then `at` stays before it.
  QString step(Head& at, qint64 number, const QByteArray& hash, const QByteArray& body) {
    if (number != at.count + 1) return QStringLiteral("it is not there: entry %1 follows").arg(number);
    const QByteArray computed = link(at.hash, at.station, number, body);
    if (computed != hash) return QStringLiteral("its hash is not that of its body and the entry before");
    at.count = number;
    at.hash = computed;
    if (!known_ || known_->station != at.station || known_->count != number) return {};
    seen_ = true;
    return known_->hash == computed
               ? QString()
               : QStringLiteral("its hash is not the one that is known: the chain was written anew");
  }

  Store& store_;
  std::optional<Head> known_;
  bool seen_ = false;
  Verified result_;
};

}  // namespace

problem::Expected<Verified> verify(Store& store, const std::optional<Head>& known) {
  store.forget_fault();
  Verified result = Walking(store, known).walk();
  if (store.fault()) return tl::unexpected(*store.fault());
  return result;
}

QString text(const Broken& broken) {
  if (broken.station.isEmpty()) return broken.what;
  return QStringLiteral("entry %1-%2 does not verify: %3").arg(broken.station).arg(broken.number).arg(broken.what);
}

QString text(const Head& head) {
  return QStringLiteral("%1-%2-%3").arg(head.station).arg(head.count).arg(QString::fromLatin1(head.hash.toHex()));
}

std::optional<Head> head_of(const QString& text) {
  const QStringList parts = text.trimmed().split(QLatin1Char('-'));
  if (parts.size() != 3 || parts.at(0).isEmpty() || parts.at(2).size() != 64) return std::nullopt;
  bool whole = false;
  const qint64 count = parts.at(1).toLongLong(&whole);
  const QByteArray hash = QByteArray::fromHex(parts.at(2).toLatin1());
  if (!whole || count < 1 || hash.size() != 32) return std::nullopt;
  return Head{parts.at(0), count, hash};
}

}  // namespace lardiner::ledger
