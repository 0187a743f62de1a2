// Who is signed in: sessions, and how often somebody may guess.
#include "station/sign_in.h"

#include <sodium.h>

#include <algorithm>

namespace lardiner::station {

using problem::Code;
using problem::Error;

namespace {

// 256 bits: nobody guesses one of ten thousand sessions.
constexpr qsizetype kTokenBytes = 32;
// Of a name that is nobody's so much is remembered.
constexpr qsizetype kLongestName = 64;

QByteArray written(const QByteArray& bytes) {
  return bytes.toBase64(QByteArray::Base64UrlEncoding | QByteArray::OmitTrailingEquals);
}

QByteArray sha256(const QByteArray& text) {
  QByteArray digest(crypto_hash_sha256_BYTES, '\0');
  crypto_hash_sha256(reinterpret_cast<unsigned char*>(digest.data()),
                     reinterpret_cast<const unsigned char*>(text.constData()),
                     static_cast<unsigned long long>(text.size()));
  return digest;
}

// Whether a length of time from `since` is not yet over at `now`: at its last moment it is.
bool within(const QDateTime& since, qint64 seconds, const QDateTime& now) {
  return since <= now && now < since.addSecs(seconds);
}

tl::unexpected<Refusal> refusal(Refusal::Why why, const QDateTime& locked_until = {}) {
  return tl::unexpected(Refusal{why, locked_until, std::nullopt});
}

tl::unexpected<Refusal> failed(const Error& error) { return tl::unexpected(Refusal{Refusal::Why::Failed, {}, error}); }

}  // namespace

QByteArray random_of_system(qsizetype bytes) {
  QByteArray out(bytes, '\0');
  randombytes_buf(out.data(), static_cast<size_t>(bytes));
  return out;
}

// ---- wrong tries

// One wrong try is forgotten for each full length of time that the name was not locked out.
void Tries::forget_some(Tally& tally, const QDateTime& now) const {
  if (tally.locked_until.isValid()) tally.since = std::max(tally.since, tally.locked_until);
  const qint64 times = std::max<qint64>(0, tally.since.secsTo(now) / limits_.one_wrong_forgotten);
  tally.wrong -= static_cast<int>(std::min<qint64>(times, tally.wrong));
  tally.since = tally.wrong == 0 ? now : tally.since.addSecs(times * limits_.one_wrong_forgotten);
  // Beyond the longest wait no more is counted: the person's own next slip would cost that wait for days.
  while (tally.wrong > limits_.wrong_tries && wait(tally.wrong) == limits_.longest_wait) --tally.wrong;
}

qint64 Tries::wait(int wrong) const {
  qint64 seconds = limits_.first_wait;
  for (int over = limits_.wrong_tries; over < wrong && seconds < limits_.longest_wait; ++over) seconds *= 2;
  return std::min(seconds, limits_.longest_wait);
}

std::optional<QDateTime> Tries::count(const QString& name, bool known, const QDateTime& now) {
  const auto found = tallies_.find(name);
  if (found != tallies_.end() && found->locked_until.isValid() && now < found->locked_until) return found->locked_until;
  if (found == tallies_.end() && !known) make_room();
  Tally& tally = tallies_[name];
  if (tally.since.isValid())
    forget_some(tally, now);
  else
    tally.since = now;
  ++tally.wrong;
  tally.last = now;
  tally.known = known;
  tally.locked_until = tally.wrong < limits_.wrong_tries ? QDateTime() : now.addSecs(wait(tally.wrong));
  return std::nullopt;
}

// What a try has locked it unlocks, but not what one after it has.
void Tries::give_back(const QString& name, const QDateTime& now) {
  const auto found = tallies_.find(name);
  if (found == tallies_.end()) return;
  if (--found->wrong < limits_.wrong_tries || found->last == now) found->locked_until = QDateTime();
  if (found->wrong <= 0) tallies_.erase(found);
}

QDateTime Tries::locked_until(const QString& name) const { return tallies_.value(name).locked_until; }

// People of the kitchen are never forgotten for others' sake, or many names would free one of them.
void Tries::make_room() {
  auto oldest = tallies_.end();
  qsizetype unknown = 0;
  for (auto at = tallies_.begin(); at != tallies_.end(); ++at) {
    if (at->known) continue;
    ++unknown;
    if (oldest == tallies_.end() || at->last < oldest->last) oldest = at;
  }
  if (unknown >= limits_.unknown_names) tallies_.erase(oldest);
}

// ---- sessions

SignIn::SignIn(const Pins& pins, Random random, const SignInLimits& limits)
    : pins_(pins), random_(std::move(random)), limits_(limits), pin_tries_(limits_), word_tries_(limits_) {}

std::optional<Error> SignIn::set_tokens(QByteArray& token, QByteArray& csrf) {
  const QByteArray bytes = random_(2 * kTokenBytes);
  if (bytes.size() != 2 * kTokenBytes)
    return Error{Code::Machine,
                 QStringLiteral("there are no random numbers to begin a session with"),
                 {},
                 QStringLiteral("see that the system gives random numbers")};
  token = written(bytes.left(kTokenBytes));
  csrf = written(bytes.mid(kTokenBytes));
  return std::nullopt;
}

tl::expected<Begun, Refusal> SignIn::begin(const QString& initials, const QString& pin, const QDateTime& now,
                                           const QByteArray& in_place_of) {
  const QString name = initials.left(kLongestName);
  const problem::Expected<bool> known = pins_.has(initials);
  if (!known) return failed(known.error());
  {
    const std::scoped_lock lock(mutex_);
    if (const auto until = pin_tries_.count(name, *known, now)) return refusal(Refusal::Why::Locked, *until);
  }
  const problem::Expected<QByteArray> mark = pins_.mark(initials);
  if (!mark) return failed(mark.error());
  const problem::Expected<bool> right = pins_.verify(initials, pin);

  const std::scoped_lock lock(mutex_);
  if (right && !*right) return refusal(Refusal::Why::Wrong, pin_tries_.locked_until(name));
  pin_tries_.give_back(name, now);
  if (!right) return failed(right.error());
  QByteArray token;
  Session session{initials, now, now, {}, {}, *mark};
  if (const std::optional<Error> error = set_tokens(token, session.csrf)) return failed(*error);
  sessions_.remove(sha256(in_place_of));
  return add(token, std::move(session));
}

Begun SignIn::add(const QByteArray& token, Session session) {
  if (sessions_.size() >= limits_.sessions) make_room();
  const Who who_begins = who(session, session.begun);
  sessions_.insert(sha256(token), std::move(session));
  return {token, who_begins};
}

void SignIn::make_room() {
  const auto longest_unused = std::min_element(sessions_.begin(), sessions_.end(),
                                               [](const Session& a, const Session& b) { return a.used < b.used; });
  if (longest_unused != sessions_.end()) sessions_.erase(longest_unused);
}

// The session of a token, used now; one that has ended is taken out.
SignIn::Sessions::iterator SignIn::live(const QByteArray& token, const QDateTime& now) {
  const auto found = sessions_.find(sha256(token));
  if (found == sessions_.end()) return found;
  const bool lives = within(found->begun, limits_.longest, now) && now < found->used.addSecs(limits_.unused);
  if (!lives) {
    sessions_.erase(found);
    return sessions_.end();
  }
  found->used = std::max(found->used, now);
  return found;
}

Who SignIn::who(const Session& session, const QDateTime& now) const {
  Who out;
  out.initials = session.initials;
  out.csrf = session.csrf;
  out.until = std::min(session.used.addSecs(limits_.unused), session.begun.addSecs(limits_.longest));
  out.strong = session.strong_until.isValid() && now < session.strong_until;
  if (out.strong) out.strong_until = session.strong_until;
  return out;
}

std::optional<Who> SignIn::find(const QByteArray& token, const QDateTime& now) {
  std::optional<Who> found;
  QByteArray mark;
  {
    const std::scoped_lock lock(mutex_);
    const auto session = live(token, now);
    if (session == sessions_.end()) return std::nullopt;
    found = who(*session, now);
    mark = session->mark;
  }
  if (const auto is_now = pins_.mark(found->initials); is_now && *is_now == mark) return found;
  end(token);
  return std::nullopt;
}

bool SignIn::csrf_matches(const Who& who, const QByteArray& given) {
  return !who.csrf.isEmpty() && given.size() == who.csrf.size() &&
         sodium_memcmp(given.constData(), who.csrf.constData(), static_cast<size_t>(given.size())) == 0;
}

tl::expected<Who, Refusal> SignIn::strengthen(const QByteArray& token, const QString& word, const QDateTime& now) {
  QString initials;
  {
    const std::scoped_lock lock(mutex_);
    const auto found = live(token, now);
    if (found == sessions_.end()) return refusal(Refusal::Why::NoSession);
    initials = found->initials;
    if (const auto until = word_tries_.count(initials, true, now)) return refusal(Refusal::Why::Locked, *until);
  }
  const problem::Expected<bool> right = pins_.verify_strong(initials, word);

  const std::scoped_lock lock(mutex_);
  if (right && !*right) return refusal(Refusal::Why::Wrong, word_tries_.locked_until(initials));
  word_tries_.give_back(initials, now);
  if (!right) return failed(right.error());
  const auto found = live(token, now);  // it may have ended meanwhile
  if (found == sessions_.end()) return refusal(Refusal::Why::NoSession);
  found->strong_until = now.addSecs(limits_.strong);
  return who(*found, now);
}

void SignIn::end(const QByteArray& token) {
  const std::scoped_lock lock(mutex_);
  sessions_.remove(sha256(token));
}

}  // namespace lardiner::station
