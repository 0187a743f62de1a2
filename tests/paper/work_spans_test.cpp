// The picture of spans: bars where their times are, texts that nothing touches, the axis on every page.
#include "paper/work_axis.h"
#include "paper/work_pages.h"
#include "work_sheets.h"

namespace lardiner::paper {

namespace {

using facts::Spans;

SpansPicture picture_of(const Spans& spans) {
  const auto found = spans_picture(spans, shipped_faces());
  if (!found) FAIL(problem::text(found.error()).toStdString());
  return *found;
}

// One span on an axis of 100.
Spans one_span(Spans::Span span) {
  Spans out;
  out.length = 100;
  out.spans = {std::move(span)};
  return out;
}

// The axis, from its rule.
Axis axis_of(const Drawing& drawing) {
  for (const Box& box : drawing.boxes)
    if (box.height.value == kRule && box.x.value > 0 && box.width.value > 500)
      return {box.x.value, box.width.value, 100};
  FAIL("no axis");
  return {};
}

bool has_box(const Drawing& drawing, int left, int right, int least_height) {
  return std::any_of(drawing.boxes.begin(), drawing.boxes.end(), [&](const Box& box) {
    return box.ink == Ink::Black && box.height.value >= least_height && box.x.value == left &&
           (box.x + box.width).value == right;
  });
}

}  // namespace

TEST_CASE("a span's bars stand where its times are on the axis", "[paper][work][spans]") {
  const SpansPicture picture = picture_of(one_span({QStringLiteral("Butter"), 20, 50, 80, 30, false}));
  const Axis axis = axis_of(picture.drawing);
  CHECK(has_box(picture.drawing, axis.at(20), axis.at(20) + 3, 40));  // the window's left end
  CHECK(has_box(picture.drawing, axis.at(50) - 3, axis.at(50), 40));  // and right
  CHECK(has_box(picture.drawing, axis.at(20), axis.at(50), 3));       // its edges
  CHECK(has_box(picture.drawing, axis.at(30), axis.at(60), 20));      // the work takes 80 - 50 from 30
  CHECK(has_box(picture.drawing, axis.at(50), axis.at(80), 3));       // ready at the latest
}

TEST_CASE("a window that nothing bounds before has no left end", "[paper][work][spans]") {
  const SpansPicture picture = picture_of(one_span({QStringLiteral("Butter"), 20, 50, 80, 30, true}));
  const Axis axis = axis_of(picture.drawing);
  CHECK_FALSE(has_box(picture.drawing, axis.at(20), axis.at(20) + 3, 40));
  CHECK_FALSE(has_box(picture.drawing, axis.at(20), axis.at(50), 3));
  CHECK(has_box(picture.drawing, axis.at(50) - 3, axis.at(50), 40));
}

TEST_CASE("a window of no width, or work of no time, is still seen", "[paper][work][spans]") {
  const SpansPicture picture = picture_of(one_span({QStringLiteral("Butter"), 50, 50, 50, 50, false}));
  const Axis axis = axis_of(picture.drawing);
  CHECK(has_box(picture.drawing, axis.at(50), axis.at(50) + 3, 40));
  CHECK(std::any_of(picture.drawing.boxes.begin(), picture.drawing.boxes.end(),
                    [&](const Box& box) { return box.x.value == axis.at(50) && box.height.value == 24; }));
}

TEST_CASE("of marks too close for their texts some are left out evenly, strong ones never", "[paper][work][spans]") {
  Spans spans = one_span({QStringLiteral("Butter"), 20, 50, 80, 30, false});
  for (int at = 0; at <= 100; ++at) spans.marks.push_back({at, QStringLiteral("at %1").arg(at), false});
  for (int at = 0; at <= 100; at += 4) spans.marks.push_back({at, QStringLiteral("Strong %1").arg(at), true});
  const SpansPicture picture = picture_of(spans);
  const QString drawn = read(picture.drawing);
  for (int at = 0; at <= 100; at += 4) CHECK(drawn.contains(QStringLiteral("Strong%1").arg(at)));
  check_ink(picture.drawing,
            {0, 0, static_cast<double>(picture.size.width.value), static_cast<double>(picture.size.height.value)});

  spans.marks.clear();
  for (int at = 0; at <= 100; at += 5) spans.marks.push_back({at, QStringLiteral("%1:00").arg(at), false});
  std::vector<int> shown;
  for (const TextRun& run : picture_of(spans).drawing.texts)
    if (run.text.endsWith(QStringLiteral(":00"))) shown.push_back(run.text.section(u':', 0, 0).toInt());
  REQUIRE(shown.size() > 3);
  for (std::size_t i = 2; i < shown.size(); ++i) CHECK(shown[i] - shown[i - 1] == shown[1] - shown[0]);
  CHECK(shown.size() < 21);

  spans.marks = {{10, QStringLiteral("10:00"), false}, {60, QStringLiteral("60:00"), false}};
  CHECK(read(picture_of(spans).drawing).contains(QStringLiteral("10:0060:00")));
}

TEST_CASE("pictures by chance, in every language, keep texts off bars and each other", "[paper][work][spans]") {
  unsigned seed = 0;
  for (const QString& language : shipped_languages())
    for (int round = 0; round < 4; ++round) {
      CAPTURE(language, ++seed);
      const Spans spans = SheetChance(seed, language).spans(1 + round * 5);
      const SpansPicture picture = picture_of(spans);
      CHECK(picture.size.width.value == 2480 - 2 * kSideMargin);
      check_ink(picture.drawing,
                {0, 0, static_cast<double>(picture.size.width.value), static_cast<double>(picture.size.height.value)});
      for (const Spans::Span& span : spans.spans)
        CHECK(read(picture.drawing).contains(without_spaces(span.text.normalized(QString::NormalizationForm_C))));
    }
}

TEST_CASE("a picture that fits a page is not split; a longer one repeats its axis", "[paper][work][spans]") {
  Spans spans = one_span({QStringLiteral("Butter"), 20, 50, 80, 30, false});
  spans.caption = QStringLiteral("When each can start");
  spans.marks = {{0, QStringLiteral("Thursday"), true}};
  spans.notes << QStringLiteral("How to read it");
  spans.spans.resize(15, spans.spans.front());
  facts::WorkSheet sheet = bare_sheet();
  sheet.parts = {plain_table(10), spans};
  const auto has = [](const Drawing& page, const char* text) { return read(page).count(QLatin1String(text)); };
  const auto two = pages_of(sheet);
  REQUIRE(two.size() == 2);
  CHECK(has(two[0], "Butter") == 0);
  CHECK(has(two[1], "Butter") == 15);
  CHECK(has(two[1], "Howtoreadit") == 1);

  spans.spans.resize(90, spans.spans.front());
  sheet.parts = {spans};
  const auto many = pages_of(sheet);
  REQUIRE(many.size() > 2);
  qsizetype all = 0;
  for (const Drawing& page : many) {
    all += has(page, "Butter");
    CHECK(has(page, "WheneachcanstartThursday") == 1);
  }
  CHECK(all == 90);
}

TEST_CASE("a span's word that is wider than its column is refused by name", "[paper][work][spans]") {
  Spans spans = one_span({QString(80, u'm'), 20, 50, 80, 30, false});
  const auto refused = spans_picture(spans, shipped_faces());
  REQUIRE_FALSE(refused);
  CHECK(refused.error().front().code == problem::Code::NoRoom);
  CHECK(refused.error().front().what.contains(spans.spans.front().text));
  spans.spans.front().text = QString(10, u'm') + u' ' + QString(10, u'm');
  CHECK(spans_picture(spans, shipped_faces()));
  spans.spans.front().text = QStringLiteral("\u0E01");
  CHECK(spans_picture(spans, shipped_faces()).error().front().code == problem::Code::NoGlyph);
}

}  // namespace lardiner::paper
