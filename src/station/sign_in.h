// Who is signed in: sessions, and how often somebody may guess.
#pragma once

#include <QByteArray>
#include <QDateTime>
#include <QHash>
#include <functional>
#include <mutex>
#include <optional>

#include "station/pins.h"

namespace lardiner::station {

/// How long things last, in seconds, and how many there may be. The constructor of SignIn has no other default.
struct SignInLimits {
  qint64 unused = qint64{15} * 60;               ///< a session that nobody uses ends after this: tablets lie about
  qint64 longest = qint64{12} * 3600;            ///< a session ends after this however it is used: one long shift
  qint64 strong = qint64{10} * 60;               ///< how long a strong word holds: one correction or recall
  qint64 first_wait = 60;                        ///< the first wait of a person locked out; each further is twice it
  qint64 longest_wait = qint64{30} * 60;         ///< but never more than this
  qint64 one_wrong_forgotten = qint64{30} * 60;  ///< one wrong try is forgotten for each such time not locked out
  int wrong_tries = 5;                           ///< the wrong try at which a person is first locked out
  qsizetype sessions = 10'000;                   ///< most sessions; beyond them the longest unused ends
  qsizetype unknown_names = 1'000;  ///< at least 1: most names counted that are nobody's; the longest untried goes
};

/// So many random bytes that nobody can foretell.
using Random = std::function<QByteArray(qsizetype)>;
/// The operating system's, through libsodium.
QByteArray random_of_system(qsizetype bytes);

/// Somebody who is signed in, at the moment of asking.
struct Who {
  QString initials;
  bool strong = false;     ///< the strong word was given, and still holds
  QDateTime strong_until;  ///< invalid unless strong
  QDateTime until;         ///< when the session ends if it is not used again
  QByteArray csrf;         ///< what a form of this session carries: ASCII, fit for HTML and addresses
};

/// A session just begun.
struct Begun {
  QByteArray token;  ///< for the cookie: 43 letters of base64url. It is nowhere else: only its SHA-256 is kept
  Who who;
};

/// Why somebody was not let in, or is not taken for strong.
struct Refusal {
  enum class Why {
    NoSession,  ///< the token belongs to none, or to one that has ended
    Wrong,      ///< the name or the PIN, never said which; or the strong word
    Locked,     ///< too many wrong tries: not even looked at
    Failed      ///< the machine: `error`
  };
  Why why = Why::Wrong;
  QDateTime locked_until;               ///< from then on the person may try again; invalid when that is now
  std::optional<problem::Error> error;  ///< of Failed alone
};

/// Wrong tries by name. A try is counted before it is looked at, and given back when it was right, so that tries at the
/// same time are no more tries. A right one forgives no wrong ones, or whoever guesses would go on each time the person
/// signs in: only time does. So with the limits above nobody gets more than 11 guesses at one person's PIN and another
/// 2 an hour, whatever the order. REQUIRES of all: the SignIn's mutex is held.
class Tries {
 public:
  explicit Tries(const SignInLimits& limits) : limits_(limits) {}

  /// Counts a try; or, when the name is locked out, until when, and counts nothing.
  std::optional<QDateTime> count(const QString& name, bool known, const QDateTime& now);
  /// The try counted at `now` was right, or could not be looked at.
  void give_back(const QString& name, const QDateTime& now);
  /// Until when the name is locked out; invalid when it is not.
  QDateTime locked_until(const QString& name) const;

 private:
  struct Tally {
    int wrong = 0;
    QDateTime since;  // from when on wrong tries are forgotten
    QDateTime last;
    QDateTime locked_until;
    bool known = false;
  };
  void forget_some(Tally& tally, const QDateTime& now) const;
  qint64 wait(int wrong) const;
  void make_room();

  const SignInLimits& limits_;
  QHash<QString, Tally> tallies_;
};

/// The sessions of one station, in memory alone: they end with the program. Every function may be called from several
/// threads. Nothing here asks the time: `now` is valid and of one clock. A session also ends when that clock is set
/// back before its beginning.
class SignIn {
 public:
  /// `pins` must outlive this. `random` is called by one thread at a time.
  SignIn(const Pins& pins, Random random, const SignInLimits& limits = {});
  SignIn(const SignIn&) = delete;
  SignIn& operator=(const SignIn&) = delete;

  /// A new session. `in_place_of`: the token of the session that the tablet had, which ends when the new one begins.
  /// A wrong name and a wrong PIN are answered alike and after as long; both are counted by name. A person is locked
  /// out, the station never.
  tl::expected<Begun, Refusal> begin(const QString& initials, const QString& pin, const QDateTime& now,
                                     const QByteArray& in_place_of = {});

  /// Whose session that is; nobody when it has ended, as it does when that person's PIN or strong word is set anew.
  /// Counts as a use of it.
  std::optional<Who> find(const QByteArray& token, const QDateTime& now);

  /// Whether a form was made for that session. Takes as long wherever they differ.
  static bool csrf_matches(const Who& who, const QByteArray& given);

  /// Strong from now on, for as long as the limits say. Wrong words are counted as wrong PINs are, but apart from them.
  tl::expected<Who, Refusal> strengthen(const QByteArray& token, const QString& word, const QDateTime& now);

  void end(const QByteArray& token);  ///< of none: nothing happens

 private:
  struct Session {
    QString initials;
    QDateTime begun;
    QDateTime used;
    QDateTime strong_until;
    QByteArray csrf;
    QByteArray mark;  // of the person's PIN: Pins::mark
  };
  using Sessions = QHash<QByteArray, Session>;

  std::optional<problem::Error> set_tokens(QByteArray& token, QByteArray& csrf);
  Begun add(const QByteArray& token, Session session);
  Sessions::iterator live(const QByteArray& token, const QDateTime& now);
  Who who(const Session& session, const QDateTime& now) const;
  void make_room();

  const Pins& pins_;
  const Random random_;
  const SignInLimits limits_;
  std::mutex mutex_;  // of all below; never held while a hash is made
  Tries pin_tries_;
  Tries word_tries_;
  Sessions sessions_;  // by the SHA-256 of the token
};

}  // namespace lardiner::station
