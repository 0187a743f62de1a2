// Compresses a PDF's streams (ISO 32000-1:2008, 7.4.4), with one set of tables for all: to set zlib up takes longer
// than to compress what a label has of its own.
#pragma once

#include <zlib.h>

#include <QByteArray>

namespace lardiner::paper {

class Deflate {
 public:
  Deflate();
  ~Deflate();
  Deflate(const Deflate&) = delete;
  Deflate& operator=(const Deflate&) = delete;

  /// A zlib stream (RFC 1950) at zlib's default level; empty when there is no memory.
  QByteArray compressed(const QByteArray& bytes);

 private:
  z_stream stream_{};
  bool ready_ = false;
};

}  // namespace lardiner::paper
