// The texts of what is refused.
#include "scan/refusals.h"

namespace lardiner::scan {

namespace {

Refusal refusal(problem::Code code, const QString& name, const QString& what, const QString& hint) {
  return Refusal(problem::Error{code, what, {name, 0, 0, {}, 1, 1}, hint});
}

Refusal malformed(const QString& name, const QString& what, const QString& hint) {
  return refusal(problem::Code::Malformed, name, what, hint);
}

Refusal beyond(const QString& name, const QString& what, const QString& hint) {
  return refusal(problem::Code::Range, name, what, hint);
}

const QString kSmallerPicture = QStringLiteral("take the picture again, or make it smaller");

const QString kAsPicture = QStringLiteral("take a picture of what it shows, or save it again as a plain PNG");

QString gigabytes(qint64 bytes) { return QStringLiteral("%1 GB").arg(bytes >> 30); }

QString millions(qint64 pixels) { return QString::number((pixels + 500'000) / 1'000'000); }

}  // namespace

Refusal refused_as_empty(const QString& name) {
  return malformed(name, QStringLiteral("the file is empty"), QStringLiteral("give a PNG, JPEG, WebP or PDF file"));
}

Refusal refused_as_unknown(const QString& name) {
  return malformed(name, QStringLiteral("this is no PNG, JPEG, WebP or PDF file"),
                   QStringLiteral("what it is is told by its first bytes, not by its name; save it as one of these"));
}

Refusal refused_as_cut_short(const QString& name) {
  return malformed(name, QStringLiteral("the file ends before its end"), QStringLiteral("copy or send it again"));
}

Refusal refused_as_damaged(const QString& name) {
  return malformed(name, QStringLiteral("the file is damaged and cannot be read"),
                   QStringLiteral("copy or send it again, or take the picture again"));
}

Refusal refused_as_locked(const QString& name) {
  return malformed(name, QStringLiteral("the PDF opens only with a password"), QStringLiteral("save it without one"));
}

Refusal refused_as_long(const QString& name, qsizetype bytes, qsizetype most) {
  return beyond(name, QStringLiteral("the file has %1 bytes, more than %2").arg(bytes).arg(most), kSmallerPicture);
}

Refusal refused_as_large(const QString& name, QSize pixels, qint64 most) {
  return beyond(name,
                QStringLiteral("the picture has %1 x %2 pixels, more than %3 million in all")
                    .arg(pixels.width())
                    .arg(pixels.height())
                    .arg(millions(most)),
                kSmallerPicture);
}

Refusal refused_as_slow(const QString& name, int scans) {
  return beyond(name, QStringLiteral("the picture is stored in %1 layers, which take too long to decode").arg(scans),
                QStringLiteral("save it again as a plain JPEG or PNG"));
}

Refusal refused_as_large_page(const QString& name, int page, qint64 most) {
  return beyond(name,
                QStringLiteral("page %1 has no size, or more than %2 million pixels at 300 dots per inch")
                    .arg(page)
                    .arg(millions(most)),
                QStringLiteral("print it on a usual size of paper"));
}

Refusal refused_as_many_pages(const QString& name, int pages, int most) {
  return beyond(name, QStringLiteral("the PDF has %1 pages, more than %2").arg(pages).arg(most),
                QStringLiteral("divide it into smaller files"));
}

Refusal refused_as_deep(const QString& name, qint64 bytes, qint64 most) {
  return beyond(name,
                QStringLiteral("the picture takes %1 million bytes in memory, more than %2 million")
                    .arg(millions(bytes), millions(most)),
                QStringLiteral("save it with 8 bits a colour, or make it smaller"));
}

Refusal refused_as_endless(const QString& name, int seconds) {
  return beyond(name, QStringLiteral("the file could not be read within %1 seconds").arg(seconds),
                kAsPicture + QStringLiteral("; or allow it more time with --seconds"));
}

Refusal refused_as_greedy(const QString& name, qint64 most) {
  return beyond(name, QStringLiteral("the file could not be read in %1 of memory").arg(gigabytes(most)), kAsPicture);
}

Refusal refused_as_breaking(const QString& name, qint64 most) {
  return malformed(
      name,
      QStringLiteral("the file could not be read: it is damaged, or takes more than %1 of memory").arg(gigabytes(most)),
      kAsPicture);
}

Refusal refused_as_not_started(const QString& name) {
  return refusal(
      problem::Code::Machine, name, QStringLiteral("no process could be started to read the file"),
      QStringLiteral("see that the machine has memory and processes left, and that lardiner is in its place"));
}

}  // namespace lardiner::scan
