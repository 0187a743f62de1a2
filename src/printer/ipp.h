// The line to one printer: IPP requests and their answers, each within a bounded time.
#pragma once

#include <cups/cups.h>

#include <QByteArray>
#include <QString>
#include <memory>

#include "problem/error.h"

namespace lardiner::printer {

struct FreeMessage {
  void operator()(ipp_t* message) const { ippDelete(message); }
};
using Message = std::unique_ptr<ipp_t, FreeMessage>;

/// Where a printer is.
struct Address {
  QString written;  ///< for errors
  QByteArray uri, host, resource;
  int port = 0;
  bool encrypted = false;
};

/// An ipp:// or ipps:// address. Errors: Malformed.
problem::Expected<Address> address_of(const QString& written);

/// Errors are Machine: a printer that does not answer, or asks for a sign-in.
class Line {
 public:
  static problem::Expected<Line> to(const QString& address);

  /// A request with what each begins with (RFC 8011, 4.1.4): charset, language, printer-uri, user.
  Message request(ipp_op_t operation) const;
  /// The answer, which may be a refusal.
  problem::Expected<Message> ask(Message request);
  /// The same, with a document behind the request. `taken_unknown` becomes true where the printer may have the whole of
  /// it and yet gave no answer.
  problem::Expected<Message> send(const Message& request, const QByteArray& document, bool& taken_unknown);

  const QString& shown() const { return address_.written; }

 private:
  struct Close {
    void operator()(http_t* http) const { httpClose(http); }
  };
  Line(Address address, http_t* http);
  problem::Error fault() const;

  Address address_;
  std::unique_ptr<http_t, Close> http_;
};

/// Whether the printer did what was asked.
bool is_done(const Message& answer);

/// What the refusal of a request says, in a sentence with the printer's own word for it where there is no better.
problem::Error refusal(const Message& answer, const QString& printer);

}  // namespace lardiner::printer
