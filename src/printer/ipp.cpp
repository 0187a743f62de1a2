// The line to one printer: IPP requests and their answers, each within a bounded time.
#include "printer/ipp.h"

#include <QStringList>
#include <array>
#include <utility>

namespace lardiner::printer {

namespace {

using problem::Code;
using problem::Error;

constexpr int kConnectMilliseconds = 10'000;
constexpr double kSilentSeconds = 10;  // a printer that wakes up takes some
constexpr int kPartLength = 512;       // of an address

Error machine(const QString& what, const QString& hint) { return {Code::Machine, what, {}, hint}; }

Error unreachable(const QString& printer) {
  return machine(QStringLiteral("the printer does not answer at %1").arg(printer),
                 QStringLiteral("see that it is switched on and in the network; lardiner printers lists those that can "
                                "be reached"));
}

Error needs_sign_in(const QString& printer) {
  return machine(
      QStringLiteral("the printer at %1 asks for a sign-in").arg(printer),
      QStringLiteral("let it print for this machine without one, or set it up in this machine's own printing "
                     "(CUPS) and print by its name there"));
}

Error malformed(const QString& written, const QString& what, const QString& hint) {
  return {Code::Malformed, QStringLiteral("\"%1\" %2").arg(written, what), {}, hint};
}

// Nobody is there to type a password: without one the request is refused.
const char* no_password(const char*, http_t*, const char*, const char*, void*) { return nullptr; }

// Called when a printer was silent for as long as is allowed: no further waiting.
int give_up(http_t*, void*) { return 0; }

bool asks_for_sign_in(ipp_status_t status) {
  return status == IPP_STATUS_ERROR_FORBIDDEN || status == IPP_STATUS_ERROR_NOT_AUTHENTICATED ||
         status == IPP_STATUS_ERROR_NOT_AUTHORIZED || status == IPP_STATUS_ERROR_CUPS_AUTHENTICATION_CANCELED;
}

// The names of the attributes that the printer does not support, each once.
QStringList unsupported(ipp_t* answer) {
  QStringList out;
  for (ipp_attribute_t* one = ippFirstAttribute(answer); one != nullptr; one = ippNextAttribute(answer)) {
    if (ippGetGroupTag(one) != IPP_TAG_UNSUPPORTED_GROUP || ippGetName(one) == nullptr) continue;
    if (const QString name = QString::fromUtf8(ippGetName(one)); !out.contains(name)) out << name;
  }
  return out;
}

Error does_not_support(const QStringList& names, const QString& printer) {
  return machine(
      QStringLiteral("the printer at %1 refused the job: it does not support %2")
          .arg(printer, names.isEmpty() ? QStringLiteral("what it asks for") : names.join(QStringLiteral(", "))),
      QStringLiteral("lardiner printers shows what it supports"));
}

Error busy(const QString& printer) {
  return machine(QStringLiteral("the printer at %1 takes no jobs now").arg(printer),
                 QStringLiteral("see what it shows, and print again when it is ready"));
}

}  // namespace

problem::Expected<Address> address_of(const QString& written) {
  const QByteArray uri = written.toUtf8();
  std::array<char, kPartLength> scheme{}, user{}, host{}, resource{};
  int port = 0;
  const auto read = httpSeparateURI(HTTP_URI_CODING_ALL, uri.constData(), scheme.data(), kPartLength, user.data(),
                                    kPartLength, host.data(), kPartLength, &port, resource.data(), kPartLength);
  const QByteArray kind(scheme.data());
  const QString form =
      QStringLiteral("write it as ipp://HOST/ipp/print, with the path that the printer's manual names");
  if (read < HTTP_URI_STATUS_OK || (kind != "ipp" && kind != "ipps") || host[0] == 0)
    return tl::unexpected(malformed(written, QStringLiteral("is no address of a printer"), form));
  if (user[0] != 0)
    return tl::unexpected(malformed(written, QStringLiteral("holds a name or password"),
                                    QStringLiteral("leave it out: others could read it from the command line")));
  if (QByteArray(resource.data()).size() < 2)
    return tl::unexpected(malformed(written, QStringLiteral("has no path"), form));
  return Address{written, uri, host.data(), resource.data(), port, kind == "ipps"};
}

Line::Line(Address address, http_t* http) : address_(std::move(address)), http_(http) {}

problem::Expected<Line> Line::to(const QString& written) {
  auto address = address_of(written);
  if (!address) return tl::unexpected(address.error());
  cupsSetPasswordCB2(no_password, nullptr);
  http_t* http = httpConnect2(address->host.constData(), address->port, nullptr, AF_UNSPEC,
                              address->encrypted ? HTTP_ENCRYPTION_ALWAYS : HTTP_ENCRYPTION_IF_REQUESTED, 1,
                              kConnectMilliseconds, nullptr);
  if (http == nullptr) return tl::unexpected(unreachable(written));
  httpSetTimeout(http, kSilentSeconds, give_up, nullptr);
  return Line(*std::move(address), http);
}

Message Line::request(ipp_op_t operation) const {
  Message out(ippNewRequest(operation));
  ippAddString(out.get(), IPP_TAG_OPERATION, IPP_TAG_URI, "printer-uri", nullptr, address_.uri.constData());
  ippAddString(out.get(), IPP_TAG_OPERATION, IPP_TAG_NAME, "requesting-user-name", nullptr, cupsUser());
  return out;
}

Error Line::fault() const {
  return asks_for_sign_in(cupsLastError()) ? needs_sign_in(address_.written) : unreachable(address_.written);
}

problem::Expected<Message> Line::ask(Message request) {
  Message answer(cupsDoRequest(http_.get(), request.release(), address_.resource.constData()));
  if (!answer) return tl::unexpected(fault());
  return answer;
}

problem::Expected<Message> Line::send(const Message& request, const QByteArray& document, bool& taken_unknown) {
  taken_unknown = false;
  const size_t size = static_cast<size_t>(document.size());
  const char* resource = address_.resource.constData();
  http_status_t status = cupsSendRequest(http_.get(), request.get(), resource, ippLength(request.get()) + size);
  if (status == HTTP_STATUS_CONTINUE) {
    status = cupsWriteRequestData(http_.get(), document.constData(), size);
    taken_unknown = status == HTTP_STATUS_CONTINUE;
  }
  Message answer(cupsGetResponse(http_.get(), resource));
  if (!answer) {
    const Error error = fault();
    taken_unknown = taken_unknown && !asks_for_sign_in(cupsLastError());
    return tl::unexpected(error);
  }
  taken_unknown = false;
  return answer;
}

bool is_done(const Message& answer) { return ippGetStatusCode(answer.get()) <= IPP_STATUS_OK_EVENTS_COMPLETE; }

Error refusal(const Message& answer, const QString& printer) {
  const ipp_status_t status = ippGetStatusCode(answer.get());
  if (asks_for_sign_in(status)) return needs_sign_in(printer);
  switch (status) {
    case IPP_STATUS_ERROR_ATTRIBUTES_OR_VALUES:
    case IPP_STATUS_ERROR_CONFLICTING:
      return does_not_support(unsupported(answer.get()), printer);
    case IPP_STATUS_ERROR_DOCUMENT_FORMAT_NOT_SUPPORTED:
      return does_not_support({QStringLiteral("PDF")}, printer);
    case IPP_STATUS_ERROR_BUSY:
    case IPP_STATUS_ERROR_NOT_ACCEPTING_JOBS:
    case IPP_STATUS_ERROR_TEMPORARY:
    case IPP_STATUS_ERROR_SERVICE_UNAVAILABLE:
      return busy(printer);
    case IPP_STATUS_ERROR_NOT_FOUND:
      return machine(QStringLiteral("there is no such printer or job at %1").arg(printer),
                     QStringLiteral("see that the address and its path are right"));
    default:
      return machine(
          QStringLiteral("the printer at %1 refused: %2").arg(printer, QString::fromUtf8(ippErrorString(status))),
          QStringLiteral("see what it shows; lardiner printers shows what it supports"));
  }
}

}  // namespace lardiner::printer
