// Runs the independent readers of PDF (poppler, MuPDF, Ghostscript, qpdf) and reads the bitmaps that they draw.
#pragma once

#include <QByteArray>
#include <QString>
#include <QStringList>
#include <QTemporaryDir>
#include <functional>
#include <vector>

#include "paper/face.h"

namespace lardiner::paper {

struct Ran {
  int status = -1;
  QByteArray out;
  QByteArray err;
};

/// Fails the test, naming the Debian package, when the program is not there.
Ran run(const QString& program, const QStringList& arguments);

/// A folder for one test's files, removed after it.
class Folder {
 public:
  QString path(const QString& name) const { return dir_.filePath(name); }
  QString write(const QString& name, const QByteArray& bytes) const;
  QByteArray read(const QString& name) const;

 private:
  QTemporaryDir dir_;
};

/// A grey picture, 0 black to 255 white.
struct Picture {
  int width = 0;
  int height = 0;
  std::vector<unsigned char> grey;
  unsigned char at(int x, int y) const {
    return grey[static_cast<std::size_t>(y) * static_cast<std::size_t>(width) + static_cast<std::size_t>(x)];
  }
};

/// Reads a raw PBM (P4) or PGM (P5).
Picture picture(const QByteArray& bytes);

/// The pages as each program draws them at a resolution, one bit a pixel.
struct Renderer {
  QString name;
  std::function<Picture(const Folder&, const QString& pdf, int page, int dpi)> draw;
};
const std::vector<Renderer>& renderers();

/// The shipped faces, loaded once.
const Faces& shipped_faces();

/// The characters that a face may show in a text, without those that print nothing and those that composing replaces.
std::vector<char32_t> visible_characters(FaceId face);

}  // namespace lardiner::paper
