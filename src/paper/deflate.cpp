// Compresses a PDF's streams, with one set of tables for all.
#include "paper/deflate.h"

namespace lardiner::paper {

Deflate::Deflate() : ready_(deflateInit(&stream_, Z_DEFAULT_COMPRESSION) == Z_OK) {}

Deflate::~Deflate() {
  if (ready_) deflateEnd(&stream_);
}

QByteArray Deflate::compressed(const QByteArray& bytes) {
  if (!ready_ || deflateReset(&stream_) != Z_OK) return {};
  QByteArray out(static_cast<qsizetype>(deflateBound(&stream_, static_cast<uLong>(bytes.size()))), Qt::Uninitialized);
  stream_.next_in = const_cast<Bytef*>(reinterpret_cast<const Bytef*>(bytes.constData()));  // it is only read
  stream_.avail_in = static_cast<uInt>(bytes.size());
  stream_.next_out = reinterpret_cast<Bytef*>(out.data());
  stream_.avail_out = static_cast<uInt>(out.size());
  if (deflate(&stream_, Z_FINISH) != Z_STREAM_END) return {};
  out.truncate(static_cast<qsizetype>(stream_.total_out));
  return out;
}

}  // namespace lardiner::paper
