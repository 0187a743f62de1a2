// A picture file as a grey bitmap.
#pragma once

#include "scan/read_pictures.h"

namespace lardiner::scan {

/// PNG, JPEG or WebP of any depth, turned upright as its EXIF entry says, what is transparent over white; of an
/// animation the first picture. Its size is looked at before it is decoded. Errors: Malformed (cannot be decoded),
/// Range (beyond the bounds). REQUIRES: the bytes are whole and of one of these kinds.
problem::Expected<symbol::Grey> decode_picture(const QByteArray& bytes, const QString& name, const Bounds& bounds);

}  // namespace lardiner::scan
