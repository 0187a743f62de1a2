// The pages of today: for a hand, and for the wall.
#include "station/plan_part.h"
#include "station/print_page.h"
#include "station/today_page.h"
#include "station/visit.h"

namespace lardiner::station {

namespace {

constexpr int kWallSeconds = 30;
constexpr size_t kStarts = 8, kStartsOnWall = 4;  // a wall has to show what is due besides, without scrolling

}  // namespace

Reply today(const Visit& visit, bool on_wall) {
  auto part = today_page(visit.desk(), visit.language());
  if (!part) return visit.trouble(500, {part.error()});
  add_plan(*part, visit.desk(), visit.language(), on_wall ? kStartsOnWall : kStarts);
  auto prints = visit.desk().open_prints();
  if (!prints) return visit.trouble(500, {prints.error()});
  std::erase_if(*prints, [](const PrintShown& one) { return !asks_somebody(one); });
  if (!prints->empty()) add_prints(visit, part->add("PRINTS"), *prints);
  part->set("LOOK", on_wall ? QStringLiteral("wall") : QStringLiteral("hand"));
  part->add(on_wall ? "ON_WALL" : "IN_HAND");
  Reply reply = visit.page(QStringLiteral("today"), visit.word("page.today"), std::move(*part));
  if (on_wall) reply.refresh_seconds = kWallSeconds;
  return reply;
}

}  // namespace lardiner::station
