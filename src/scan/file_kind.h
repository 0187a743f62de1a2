// What a file is by its bytes, and whether it is whole, before any library reads it.
#pragma once

#include <QByteArray>

namespace lardiner::scan {

enum class FileKind { Other, Png, Jpeg, WebP, Pdf };

/// By the first bytes alone.
FileKind kind_of(const QByteArray& bytes);

/// Whether the file reaches its own end: PNG its last chunk, JPEG its end marker, WebP the length that it states, PDF
/// its end line among the last bytes. What follows the end is no fault. REQUIRES: `kind` is that of the bytes, and not
/// Other.
bool is_whole(const QByteArray& bytes, FileKind kind);

/// How often a JPEG goes over its whole picture: each time takes as long as a picture of its size. 0 where it is not
/// whole.
int jpeg_scans(const QByteArray& bytes);

}  // namespace lardiner::scan
