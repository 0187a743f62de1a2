// One SQLite file, opened for one thread: prepared statements, transactions, and what went wrong.
#include "ledger/store.h"

#include <sys/vfs.h>

#include <QDir>
#include <QFileInfo>
#include <QSqlDatabase>
#include <QSqlError>
#include <QSqlQuery>
#include <QSqlRecord>
#include <QUrl>
#include <atomic>

namespace lardiner::ledger {

using problem::Code;
using problem::Error;

namespace {

constexpr int kBusyMilliseconds = 10'000;

// SQLite's result codes, https://www.sqlite.org/rescode.html
constexpr int kBusy = 5, kReadOnly = 8, kCorrupt = 11, kFull = 13, kCannotOpen = 14, kNotADatabase = 26;

// Magic numbers of statfs(2): NFS, SMB, SMB2, CIFS, AFS, Ceph, 9P.
bool is_network(const QString& folder) {
  struct statfs system {};
  if (statfs(folder.toLocal8Bit().constData(), &system) != 0) return false;
  const auto type = static_cast<quint32>(system.f_type);
  for (const quint32 network : {0x6969U, 0x517BU, 0xFE534D42U, 0xFF534D42U, 0x5346414FU, 0x00C36400U, 0x01021997U})
    if (type == network) return true;
  return false;
}

struct Said {
  int code;
  const char* what;
  const char* hint;
};

constexpr Said kSaid[] = {
    {kBusy, "another program has held the ledger for over ten seconds", "close what writes to it, and try again"},
    {kReadOnly, "the ledger may not be written", "let this account write the file and the folder that it stands in"},
    {kCorrupt, "the ledger's file is damaged", "keep a copy of it, and restore the last backup that verifies"},
    {kFull, "there is no space left for the ledger; nothing of this was recorded",
     "free some space, and record it again"},
    {kCannotOpen, "the ledger cannot be opened", "see that the folder is there and that this account may write in it"},
    {kNotADatabase, "this file is no ledger", "name the ledger's file with --ledger"},
};

Error error_of(const QString& path, const QSqlError& error) {
  const int code = error.nativeErrorCode().toInt() & 0xff;  // the primary of an extended code
  for (const Said& said : kSaid)
    if (said.code == code)
      return {Code::Machine, QString::fromLatin1(said.what), at_file(path), QString::fromLatin1(said.hint)};
  return {
      Code::Machine, QStringLiteral("the ledger's database failed: %1").arg(error.databaseText()), at_file(path), {}};
}

Error no_folder(const QString& path, const QString& folder) {
  return {Code::Machine, QStringLiteral("the folder \"%1\" is not there").arg(folder), at_file(path),
          QStringLiteral("make it, or name another place with --ledger")};
}

Error network(const QString& path) {
  return {Code::Machine, QStringLiteral("the ledger would stand on a network file system, where its locks do not hold"),
          at_file(path), QStringLiteral("name a place on this machine's own disk with --ledger")};
}

// A copy on a disk that nobody can write, as an inspector may have it, or a backup on a network file system, where no
// ledger is written. SQLite would write beside it to read it, unless it is told that nothing changes; of entries that
// still stand in the file beside it (-wal) it would then know nothing.
bool is_copy_for_reading(const QFileInfo& file) {
  const QFileInfo beside(file.filePath() + QStringLiteral("-wal"));
  const bool stays = !QFileInfo(file.path()).isWritable() || is_network(file.path());
  return file.exists() && stays && beside.size() == 0;
}

QString immutable(const QString& path) {
  return QStringLiteral("file:%1?immutable=1").arg(QString::fromLatin1(QUrl::toPercentEncoding(path, "/")));
}

}  // namespace

// Connections are known to Qt by their names; this one's goes with it.
struct Store::Connection {
  Connection() {
    static std::atomic<int> count = 0;
    name = QStringLiteral("ledger-%1").arg(++count);
    database = QSqlDatabase::addDatabase(QStringLiteral("QSQLITE"), name);
  }
  ~Connection() {
    database.close();
    database = QSqlDatabase();
    QSqlDatabase::removeDatabase(name);
  }
  Connection(const Connection&) = delete;
  Connection& operator=(const Connection&) = delete;

  QString name;
  QSqlDatabase database;
};

Statement::Statement(Store& store, const QString& sql)
    : store_(store), query_(std::make_unique<QSqlQuery>(store.connection_->database)) {
  query_->setForwardOnly(true);
  if (!query_->prepare(sql)) store_.failed(query_->lastError());
}

Statement& Statement::bind(const QVariant& value) {
  query_->bindValue(bound_++, value);
  return *this;
}

Statement& Statement::with(const std::optional<qint64>& value) { return bind(value ? QVariant(*value) : QVariant()); }

bool Statement::start() {
  bound_ = 0;
  if (store_.fault_) return false;
  if (query_->exec()) return true;
  store_.failed(query_->lastError());
  return false;
}

void Statement::run() {
  if (start()) query_->finish();
}

bool Statement::next() {
  if (!started_) started_ = start();
  if (started_ && query_->next()) return true;
  if (started_ && query_->lastError().isValid()) store_.failed(query_->lastError());
  end();
  return false;
}

void Statement::end() {
  query_->finish();
  started_ = false;
}

Statement::~Statement() = default;

qint64 Statement::number(int column) const { return query_->value(column).toLongLong(); }

bool Statement::absent(int column) const { return query_->isNull(column); }

QString Statement::text(int column) const { return query_->value(column).toString(); }

QByteArray Statement::bytes(int column) const { return query_->value(column).toByteArray(); }

Store::Store(const QString& path) : path_(path), connection_(std::make_unique<Connection>()) {}

Store::~Store() { statements_.clear(); }

problem::Expected<std::unique_ptr<Store>> Store::open(const QString& path, Access access) {
  const QFileInfo file(path);
  if (!file.dir().exists()) return tl::unexpected(no_folder(path, file.path()));
  const bool copy = access == Access::Read && is_copy_for_reading(file);
  if (!copy && is_network(file.path())) return tl::unexpected(network(path));
  std::unique_ptr<Store> store(new Store(path));
  QSqlDatabase& database = store->connection_->database;
  database.setDatabaseName(copy ? immutable(file.absoluteFilePath()) : path);
  QString options = QStringLiteral("QSQLITE_BUSY_TIMEOUT=%1").arg(kBusyMilliseconds);
  if (access == Access::Read) options += QStringLiteral(";QSQLITE_OPEN_READONLY");
  if (copy) options += QStringLiteral(";QSQLITE_OPEN_URI");
  database.setConnectOptions(options);
  if (!database.open()) return tl::unexpected(error_of(path, database.lastError()));
  if (access == Access::Write) store->run(QStringLiteral("PRAGMA journal_mode=WAL"));
  store->run(QStringLiteral("PRAGMA synchronous=FULL"));
  store->run(QStringLiteral("PRAGMA temp_store=MEMORY"));
  store->run(QStringLiteral("PRAGMA cache_size=-32768"));
  store->run(QStringLiteral("SELECT count(*) FROM sqlite_schema"));  // the file is read here for the first time
  if (store->fault_) return tl::unexpected(*store->fault_);
  return store;
}

Statement& Store::statement(const QByteArray& sql) {
  const auto known = statements_.find(sql);
  if (known != statements_.end()) return *known->second;
  const QByteArray kept(sql.constData(), sql.size());  // `sql` may be a view of what goes away
  return *(statements_[kept] = std::unique_ptr<Statement>(new Statement(*this, QString::fromUtf8(sql))));
}

void Store::run(const QString& sql) {
  if (fault_) return;
  QSqlQuery query(connection_->database);
  if (!query.exec(sql)) failed(query.lastError());
}

QStringList Store::rows(const QString& sql) {
  QSqlQuery query(connection_->database);
  query.setForwardOnly(true);
  QStringList rows;
  if (fault_ || !query.exec(sql)) {
    if (!fault_) failed(query.lastError());
    return rows;
  }
  while (query.next()) {
    QStringList values;
    for (int column = 0; column < query.record().count(); ++column) values += query.value(column).toString();
    rows += values.join(QLatin1Char('|'));
  }
  return rows;
}

void Store::begin() { statement("BEGIN IMMEDIATE").run(); }

void Store::commit() { statement("COMMIT").run(); }

void Store::roll_back() {
  const std::optional<Error> first = fault_;
  fault_.reset();
  for (auto& [sql, statement] : statements_) statement->end();
  statement("ROLLBACK").run();
  fault_ = first;  // that a full disk has ended the transaction already is no further fault
}

void Store::failed(const QSqlError& error) {
  if (!fault_) fault_ = error_of(path_, error);
}

}  // namespace lardiner::ledger
