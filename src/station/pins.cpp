// The PINs and strong words of the kitchen's people, as hashes in a file of their own.
#include "station/pins.h"

#include <fcntl.h>
#include <sodium.h>
#include <sys/file.h>
#include <sys/stat.h>
#include <unistd.h>

#include <QCryptographicHash>
#include <QFile>
#include <QFileInfo>
#include <QSaveFile>
#include <QSet>
#include <algorithm>
#include <array>
#include <mutex>
#include <vector>

#include "reader/fields.h"
#include "reader/json_text.h"
#include "reader/read.h"

namespace lardiner::station {

using problem::Code;
using problem::Error;

namespace {

constexpr int kVersion = 1;
// A person takes less than 300 bytes.
constexpr qint64 kMostBytes = qint64{1} << 20;
constexpr int kFewestDifferent = 4;

struct Hashes {
  QString initials;
  QByteArray pin;     // empty: none
  QByteArray strong;  // empty: none
};
using People = std::vector<Hashes>;
using Which = QByteArray Hashes::*;

// ---- faults of the machine

problem::Place at_file(const QString& path) { return {path, 0, 0, {}, 1, 1}; }

Error machine(const QString& path, const QString& what, const QString& reason) {
  return {
      Code::Machine, QStringLiteral("%1 (%2)").arg(what, reason), at_file(path),
      QStringLiteral("see that this account may read and write the file and its folder, and that the disk has room")};
}

Error damaged(const QString& path) {
  return {Code::Machine, QStringLiteral("the file of the PINs is damaged; nothing of it was used"), at_file(path),
          QStringLiteral("bring it back from a copy, or move it away and set every PIN anew")};
}

Error no_file(const QString& path) {
  return {Code::Missing, QStringLiteral("there is no file of PINs"), at_file(path),
          QStringLiteral("set a PIN, which makes it")};
}

Error no_library() {
  return {Code::Machine,
          QStringLiteral("libsodium could not be started"),
          {},
          QStringLiteral("see that the system gives random numbers")};
}

Error no_memory(HashCost cost) {
  return {Code::Machine,
          QStringLiteral("there is no memory to hash a PIN"),
          {},
          QStringLiteral("see that %1 MiB are free").arg(std::max<size_t>(1, cost.bytes >> 20))};
}

// ---- the file

// Whether libsodium can read the hash.
bool is_hash(const QByteArray& hash) {
  return hash.startsWith(crypto_pwhash_STRPREFIX) && hash.size() < qsizetype{crypto_pwhash_STRBYTES} &&
         crypto_pwhash_str_needs_rehash(hash.constData(), crypto_pwhash_OPSLIMIT_MIN, crypto_pwhash_MEMLIMIT_MIN) >= 0;
}

std::optional<Hashes> read_person(const reader::Value& row, problem::Errors& errors) {
  if (row.kind != reader::Value::Kind::Table) return std::nullopt;
  reader::Fields fields(row, QStringLiteral("person"), errors);
  Hashes person;
  person.initials = fields.required_text(u"initials").value_or(QString());
  person.pin = fields.text(u"pin").value_or(QString()).toUtf8();
  person.strong = fields.text(u"strong").value_or(QString()).toUtf8();
  fields.finish();
  const bool whole = (person.pin.isEmpty() || is_hash(person.pin)) &&
                     (person.strong.isEmpty() || is_hash(person.strong)) &&
                     !(person.pin.isEmpty() && person.strong.isEmpty());
  return whole ? std::optional(person) : std::nullopt;
}

std::optional<People> read_people(const reader::Value& file) {
  problem::Errors errors;
  reader::Fields fields(file, QStringLiteral("file"), errors);
  const bool ours = fields.integer(u"version", kVersion, kVersion).has_value();
  const reader::Value* rows = fields.value(u"people");
  fields.finish();
  if (!ours || rows == nullptr || rows->kind != reader::Value::Kind::List) return std::nullopt;
  People people;
  QSet<QString> names;
  for (const reader::Value& row : rows->items) {
    const std::optional<Hashes> person = read_person(row, errors);
    if (!person || names.contains(person->initials)) return std::nullopt;
    names.insert(person->initials);
    people.push_back(*person);
  }
  return errors.empty() ? std::optional(people) : std::nullopt;
}

// The reader's own words are not passed on: they show the line, and so the hashes.
problem::Expected<People> people_of(const QByteArray& bytes, const QString& path) {
  const problem::ExpectedAll<reader::Rows> rows = reader::json_rows(bytes, path);
  if (!rows || rows->count != 1) return tl::unexpected(damaged(path));
  std::optional<People> people = read_people(rows->row(0));
  if (!people) return tl::unexpected(damaged(path));
  return *std::move(people);
}

std::optional<Error> open_to_others(const QString& path) {
  constexpr QFile::Permissions others =
      QFile::ReadGroup | QFile::WriteGroup | QFile::ExeGroup | QFile::ReadOther | QFile::WriteOther | QFile::ExeOther;
  if (!(QFileInfo(path).permissions() & others)) return std::nullopt;
  return Error{Code::Machine, QStringLiteral("others than its owner may open the file of the PINs"), at_file(path),
               QStringLiteral("chmod 600 %1; if others may have read it, set every PIN anew").arg(path)};
}

problem::Expected<People> read(const QString& path) {
  QFile file(path);
  if (!file.open(QIODevice::ReadOnly)) {
    if (!QFileInfo::exists(path)) return tl::unexpected(no_file(path));
    return tl::unexpected(machine(path, QStringLiteral("the file of the PINs cannot be opened"), file.errorString()));
  }
  if (const std::optional<Error> error = open_to_others(path)) return tl::unexpected(*error);
  const QByteArray bytes = file.read(kMostBytes + 1);
  if (file.error() != QFile::NoError)
    return tl::unexpected(machine(path, QStringLiteral("the file of the PINs cannot be read"), file.errorString()));
  if (bytes.size() > kMostBytes) return tl::unexpected(damaged(path));
  return people_of(bytes, path);
}

void tell(reader::JsonText& json, const char* key, const QByteArray& value) {
  if (value.isEmpty()) return;
  json.key(QLatin1String(key));
  json.text(QString::fromUtf8(value));
}

QByteArray bytes_of(const People& people) {
  reader::JsonText json;
  json.begin_object();
  json.key(QLatin1String("version"));
  json.number(kVersion);
  json.key(QLatin1String("people"));
  json.begin_list();
  for (const Hashes& person : people) {
    json.begin_object();
    tell(json, "initials", person.initials.toUtf8());
    tell(json, "pin", person.pin);
    tell(json, "strong", person.strong);
    json.end_object();
  }
  json.end_list();
  json.end_object();
  return json.bytes() + '\n';
}

// While it lives, a file that is made is its owner's alone: QSaveFile takes no mode, and who had opened the file before
// its mode is set could read it afterwards.
class OwnersAlone {
 public:
  OwnersAlone() : before_(::umask(S_IRWXG | S_IRWXO)) {}
  ~OwnersAlone() { ::umask(before_); }
  OwnersAlone(const OwnersAlone&) = delete;
  OwnersAlone& operator=(const OwnersAlone&) = delete;

 private:
  mode_t before_;
};

bool open_for_owner(QSaveFile& file) {
  const OwnersAlone alone;
  return file.open(QIODevice::WriteOnly) && file.setPermissions(QFile::ReadOwner | QFile::WriteOwner);
}

problem::Expected<bool> write(const QString& path, const People& people) {
  const QByteArray bytes = bytes_of(people);
  QSaveFile file(path);
  // Flushed first: QSaveFile loses the reason for a failure at its commit.
  const bool whole = open_for_owner(file) && file.write(bytes) == bytes.size() && file.flush();
  const QString reason = file.errorString();
  if (!whole || !file.commit())
    return tl::unexpected(
        machine(path, QStringLiteral("the file of the PINs could not be written; it is as it was"), reason));
  return true;
}

// The folder, held by one that changes the file in it: two changes at once would lose one of them.
class Folder {
 public:
  explicit Folder(const QString& path)
      : handle_(
            ::open(QFile::encodeName(QFileInfo(path).absolutePath()).constData(), O_RDONLY | O_DIRECTORY | O_CLOEXEC)) {
    if (handle_ >= 0) ::flock(handle_, LOCK_EX);
  }
  ~Folder() {
    if (handle_ >= 0) ::close(handle_);
  }
  Folder(const Folder&) = delete;
  Folder& operator=(const Folder&) = delete;

  bool there() const { return handle_ >= 0; }
  // A rename counts only once the folder that holds the name is on the disk.
  void sync() const { ::fsync(handle_); }

 private:
  int handle_;
};

Hashes& person_of(People& people, const QString& initials) {
  const auto found =
      std::find_if(people.begin(), people.end(), [&](const Hashes& one) { return one.initials == initials; });
  if (found != people.end()) return *found;
  people.push_back({initials, {}, {}});
  return people.back();
}

problem::Expected<bool> set_hash(const QString& path, const QString& initials, Which which, const QByteArray& hash) {
  const Folder folder(path);
  if (!folder.there())
    return tl::unexpected(machine(path, QStringLiteral("the file of the PINs could not be written; it is as it was"),
                                  QStringLiteral("its folder cannot be opened")));
  problem::Expected<People> people = read(path);
  if (!people && people.error().code != Code::Missing) return tl::unexpected(people.error());
  People all = people ? *std::move(people) : People();
  person_of(all, initials).*which = hash;
  const problem::Expected<bool> written = write(path, all);
  if (written) folder.sync();
  return written;
}

// ---- what may be a PIN

bool is_figure(QChar letter) { return letter >= u'0' && letter <= u'9'; }

bool is_year(const QString& pin) {
  return pin.size() == 4 && (pin.startsWith(QLatin1String("19")) || pin.startsWith(QLatin1String("20")));
}

// 1234, 9876, 0000, 2468, 8901: each figure as far from the last, after 9 comes 0.
bool is_row(const QString& pin) {
  const auto step = [&](qsizetype at) { return (pin[at].digitValue() - pin[at - 1].digitValue() + 10) % 10; };
  for (qsizetype at = 2; at < pin.size(); ++at)
    if (step(at) != step(1)) return false;
  return true;
}

// 1212, 123123: the same part over and over.
bool is_repeated(const QString& pin) {
  for (qsizetype part = 1; part <= pin.size() / 2; ++part)
    if (pin.size() % part == 0 && pin.left(pin.size() - part) == pin.mid(part)) return true;
  return false;
}

std::optional<Error> refused_initials(const QString& initials) {
  const bool good =
      !initials.isEmpty() && initials.size() <= kMostInitials &&
      std::all_of(initials.begin(), initials.end(), [](QChar one) { return one.isPrint() && !one.isSpace(); });
  if (good) return std::nullopt;
  return Error{Code::Malformed,
               QStringLiteral("a PIN needs the initials of a person"),
               {},
               QStringLiteral("name somebody of the book")};
}

// What is hashed: the same letters typed on another keyboard are the same bytes.
QByteArray bytes_of(const QString& word) { return word.normalized(QString::NormalizationForm_C).toUtf8(); }

}  // namespace

// ---- hashing

struct Pins::Inside {
  QString path;
  HashCost cost;
  QByteArray of_nobody;  // what is compared with where there is no hash
  std::mutex mutex;      // of hashing alone

  problem::Expected<QByteArray> hash(const QByteArray& word) {
    const std::scoped_lock one_at_a_time(mutex);
    std::array<char, crypto_pwhash_STRBYTES> out{};
    const auto size = static_cast<unsigned long long>(word.size());
    if (crypto_pwhash_str(out.data(), word.constData(), size, cost.passes, cost.bytes) != 0)
      return tl::unexpected(no_memory(cost));
    return QByteArray(out.data());
  }

  bool matches(const QByteArray& hash, const QByteArray& word) {
    const std::scoped_lock one_at_a_time(mutex);
    const auto size = static_cast<unsigned long long>(word.size());
    return crypto_pwhash_str_verify(hash.constData(), word.constData(), size) == 0;
  }

  problem::Expected<bool> set(const QString& initials, Which which, const QString& word) {
    const problem::Expected<QByteArray> made = hash(bytes_of(word));
    if (!made) return tl::unexpected(made.error());
    return set_hash(path, initials, which, *made);
  }

  // The hash of the person's PIN or word; empty where there is none.
  problem::Expected<QByteArray> kept(const QString& initials, Which which) const {
    problem::Expected<People> people = read(path);
    if (!people) return tl::unexpected(people.error());
    return person_of(*people, initials).*which;
  }

  problem::Expected<bool> verify(const QString& initials, Which which, const QString& word) {
    const problem::Expected<QByteArray> hash = kept(initials, which);
    if (!hash) return tl::unexpected(hash.error());
    const bool there = !hash->isEmpty();
    return matches(there ? *hash : of_nobody, bytes_of(word)) && there;
  }
};

problem::Expected<Pins> Pins::at(const QString& path, HashCost cost) {
  if (sodium_init() < 0) return tl::unexpected(no_library());
  auto inside = std::make_unique<Inside>();
  inside->path = path;
  inside->cost = cost;
  QByteArray nobodys(32, '\0');
  randombytes_buf(nobodys.data(), static_cast<size_t>(nobodys.size()));
  const problem::Expected<QByteArray> hash = inside->hash(nobodys);
  if (!hash) return tl::unexpected(hash.error());
  inside->of_nobody = *hash;
  return Pins(std::move(inside));
}

Pins::Pins(std::unique_ptr<Inside> inside) : inside_(std::move(inside)) {}
Pins::~Pins() = default;
Pins::Pins(Pins&&) noexcept = default;

problem::Expected<bool> Pins::set(const QString& initials, const QString& pin) {
  if (const std::optional<Error> error = refused_initials(initials)) return tl::unexpected(*error);
  if (const std::optional<Error> error = refused_pin(pin)) return tl::unexpected(*error);
  return inside_->set(initials, &Hashes::pin, pin);
}

problem::Expected<bool> Pins::set_strong(const QString& initials, const QString& word) {
  if (const std::optional<Error> error = refused_initials(initials)) return tl::unexpected(*error);
  if (const std::optional<Error> error = refused_strong_word(word)) return tl::unexpected(*error);
  return inside_->set(initials, &Hashes::strong, word);
}

problem::Expected<bool> Pins::forget(const QString& initials) {
  const Folder folder(inside_->path);
  problem::Expected<People> people = read(inside_->path);
  if (!people) return tl::unexpected(people.error());
  if (std::erase_if(*people, [&](const Hashes& one) { return one.initials == initials; }) == 0) return false;
  const problem::Expected<bool> written = write(inside_->path, *people);
  if (written && folder.there()) folder.sync();
  return written;
}

problem::Expected<bool> Pins::verify(const QString& initials, const QString& pin) const {
  return inside_->verify(initials, &Hashes::pin, pin);
}

problem::Expected<bool> Pins::verify_strong(const QString& initials, const QString& word) const {
  return inside_->verify(initials, &Hashes::strong, word);
}

problem::Expected<bool> Pins::has(const QString& initials) const {
  return inside_->kept(initials, &Hashes::pin).map([](const QByteArray& hash) { return !hash.isEmpty(); });
}

problem::Expected<QByteArray> Pins::mark(const QString& initials) const {
  problem::Expected<People> people = read(inside_->path);
  if (!people) return tl::unexpected(people.error());
  const Hashes hashes = person_of(*people, initials);
  return QCryptographicHash::hash(hashes.pin + '\n' + hashes.strong, QCryptographicHash::Sha256);
}

std::optional<Error> refused_pin(const QString& pin) {
  const bool figures = std::all_of(pin.begin(), pin.end(), is_figure);
  if (!figures || pin.size() < kFewestFigures || pin.size() > kMostFigures)
    return Error{Code::Malformed,
                 QStringLiteral("a PIN is 4 to 12 figures"),
                 {},
                 QStringLiteral("choose 4 to 12 figures, without spaces or letters")};
  if (!is_year(pin) && !is_row(pin) && !is_repeated(pin)) return std::nullopt;
  return Error{
      Code::Unsafe,
      QStringLiteral("this PIN is among the first that anybody would try"),
      {},
      QStringLiteral("choose figures that are no year, no row such as 1234 or 2468, and nothing repeated such as "
                     "0000 or 1212")};
}

std::optional<Error> refused_strong_word(const QString& word) {
  const auto letters = word.normalized(QString::NormalizationForm_C).toUcs4();
  const bool size = letters.size() >= kShortestStrongWord && letters.size() <= kLongestStrongWord;
  if (!size || std::all_of(letters.begin(), letters.end(), [](uint one) { return QChar::isDigit(one); }))
    return Error{Code::Malformed,
                 QStringLiteral("a strong word is 8 to 128 characters, not figures alone"),
                 {},
                 QStringLiteral("choose three or four words that do not belong together")};
  if (QSet<uint>(letters.begin(), letters.end()).size() >= kFewestDifferent) return std::nullopt;
  return Error{Code::Unsafe,
               QStringLiteral("this strong word is the same few characters over and over"),
               {},
               QStringLiteral("choose three or four words that do not belong together")};
}

}  // namespace lardiner::station
