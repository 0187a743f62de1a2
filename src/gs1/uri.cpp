// The parts of web addresses (RFC 3986) that Digital Link needs; for this layer alone.
#include "gs1/uri.h"

#include <QByteArray>
#include <QRegularExpression>

namespace lardiner::gs1 {

using problem::Code;
using problem::Error;

bool is_hexadecimal(QChar letter) { return QStringView(u"0123456789ABCDEFabcdef").contains(letter); }

QString percent_encoded(const QString& text) {
  // RFC 3986, 2.3: unreserved characters. No value holds a tilde, the fourth mark among them.
  return QString::fromLatin1(text.toUtf8().toPercentEncoding(QByteArray(), QByteArrayLiteral("~")));
}

problem::Expected<QString> percent_decoded(QStringView text) {
  QString plain;
  for (qsizetype at = 0; at < text.size(); ++at) {
    if (text[at] != u'%') {
      plain += text[at];
      continue;
    }
    const QStringView digits = text.mid(at + 1, 2);
    if (digits.size() != 2 || !is_hexadecimal(digits[0]) || !is_hexadecimal(digits[1]))
      return tl::make_unexpected(Error{Code::Malformed,
                                       QStringLiteral("\"%1\" is no percent-encoding").arg(text.mid(at, 3)),
                                       {},
                                       QStringLiteral("write two hexadecimal digits behind %")});
    plain += QChar(digits.toUInt(nullptr, 16));
    at += 2;
  }
  return plain;
}

std::optional<Error> web_address_fault(const QString& address) {
  static const QRegularExpression kAddress(
      QStringLiteral(R"(\A[Hh][Tt][Tt][Pp][Ss]?://[A-Za-z0-9.-]+(:[0-9]+)?(/[A-Za-z0-9._~!$&'()*+,;=:@%-]+)*\z)"));
  if (kAddress.match(address).hasMatch()) return {};
  return Error{Code::Malformed,
               QStringLiteral("\"%1\" is no web address for labels").arg(address),
               {},
               QStringLiteral("write it as https://id.example, without a slash at the end")};
}

bool looks_like_uri(const QString& text) {
  static const QRegularExpression kUri(
      QStringLiteral(R"(\A[Hh][Tt][Tt][Pp][Ss]?://[A-Za-z0-9._~:/?#@!$&'()*+,;=%\[\]-]+\z)"));
  return kUri.match(text).hasMatch();
}

}  // namespace lardiner::gs1
