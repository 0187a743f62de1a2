// QR codes (ISO/IEC 18004): the modules of a content.
#include "symbol/qr.h"

#include <ZXing/BitMatrix.h>
#include <ZXing/MultiFormatWriter.h>

#include <string>

namespace lardiner::symbol {

namespace {

using problem::Code;
using problem::Error;

// ZXing numbers the levels of every kind of code from 0 to 8; it takes the odd ones for L, M, Q and H.
int zxing_level(ErrorCorrection correction) { return 1 + 2 * static_cast<int>(correction); }

// One wide character a byte: written in Latin-1, the encoder's own choice, each comes out as that byte.
std::wstring widened(const QByteArray& content) {
  std::wstring wide;
  wide.reserve(static_cast<size_t>(content.size()));
  for (const char byte : content) wide += static_cast<wchar_t>(static_cast<unsigned char>(byte));
  return wide;
}

Matrix packed(const ZXing::BitMatrix& code) {
  Matrix matrix;
  matrix.size = code.width();
  matrix.version = (matrix.size - modules(0)) / 4;
  matrix.bits.assign(static_cast<size_t>(matrix.stride() * matrix.size), 0);
  for (int y = 0; y < matrix.size; ++y) {
    quint8* row = matrix.bits.data() + y * matrix.stride();
    for (int x = 0; x < matrix.size; ++x)
      if (code.get(x, y)) row[x / 8] = static_cast<quint8>(row[x / 8] | (0x80 >> (x % 8)));
  }
  return matrix;
}

}  // namespace

problem::Expected<Matrix> encode_qr(const QByteArray& content, ErrorCorrection correction) {
  if (content.isEmpty())
    return tl::make_unexpected(Error{Code::Missing,
                                     QStringLiteral("there is nothing to put into the code"),
                                     {},
                                     QStringLiteral("give the address that a scan should show")});
  if (qr_version_for(content, correction) == 0)
    return tl::make_unexpected(Error{
        Code::NoRoom,
        QStringLiteral("%1 bytes are more than any QR code holds").arg(content.size()),
        {},
        QStringLiteral("at this error correction it holds %1 bytes").arg(byte_capacity(kLargestVersion, correction))});
  const ZXing::MultiFormatWriter writer =
      ZXing::MultiFormatWriter(ZXing::BarcodeFormat::QRCode).setEccLevel(zxing_level(correction)).setMargin(0);
  return packed(writer.encode(widened(content), 0, 0));
}

}  // namespace lardiner::symbol
