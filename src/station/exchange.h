// One request of a browser and the answer to it, free of the library that carries them.
#pragma once

#include <QByteArray>
#include <QList>
#include <QString>
#include <QStringList>
#include <functional>
#include <utility>
#include <vector>

namespace lardiner::station {

/// Names and values as a form or an address gives them, in their order; a name may stand more than once.
class Fields {
 public:
  /// "a=1&b=two+words", percent-encoded UTF-8.
  static Fields read(const QByteArray& encoded);

  void add(const QString& name, const QString& value) { all_.emplace_back(name, value); }
  bool has(const QString& name) const;
  QString value(const QString& name) const;  ///< the first; empty where there is none
  QStringList values(const QString& name) const;
  const std::vector<std::pair<QString, QString>>& all() const { return all_; }

 private:
  std::vector<std::pair<QString, QString>> all_;
};

/// A file that a form sent.
struct Upload {
  QString name;
  QByteArray bytes;
};

struct Request {
  enum class Method { Get, Post };
  Method method = Method::Get;
  QString path;        ///< "/lot/A26329CLB01K", decoded, without the query
  QByteArray address;  ///< as it was sent, with the query
  Fields query, form;
  std::vector<Upload> uploads;
  QByteArray body;      ///< of what is no form
  QByteArray type;      ///< of the body, as sent
  QString host;         ///< whom the browser believes to speak with: "tablet.kitchen.example:8443"
  QString origin;       ///< of the page that sends a form; empty: not said
  QString csrf;         ///< header X-CSRF-Token, of a program; a form has its field
  QString session;      ///< the cookie of a sign-in; empty: none
  QString language;     ///< the cookie of a choice; empty: the kitchen's first
  QString from;         ///< the other end's address
  bool secure = false;  ///< over TLS
};

struct Reply {
  int status = 200;
  QByteArray type = "text/html; charset=utf-8";
  QByteArray body;
  QString to;                 ///< of a redirection: an address of the station's own
  QList<QByteArray> cookies;  ///< values of Set-Cookie
  QByteArray file_name;       ///< of what is to be saved; ASCII, empty: it is shown
  bool kept = false;          ///< the same for everybody, and may be kept: the style, a picture
  int refresh_seconds = 0;    ///< the page asks again by itself; 0: never
};

using Answer = std::function<Reply(const Request&)>;

/// `wanted` where it is an address of the station's own, else its first page: what a request says of where to go on may
/// lead to nobody else.
QString own_address(const QString& wanted);

/// 303 to an address of the station's own.
Reply redirection(const QString& to);

/// A PDF to be kept under a name in ASCII.
Reply pdf_reply(const QByteArray& pdf, const QByteArray& file_name);

}  // namespace lardiner::station
