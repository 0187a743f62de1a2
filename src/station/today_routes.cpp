// The pages of today: for a hand, and for the wall.
#include "station/today_page.h"
#include "station/visit.h"

namespace lardiner::station {

namespace {

constexpr int kWallSeconds = 30;

}  // namespace

Reply today(const Visit& visit, bool on_wall) {
  auto part = today_page(visit.desk(), visit.language());
  if (!part) return visit.trouble(500, {part.error()});
  Reply reply = visit.page(on_wall ? QStringLiteral("wall") : QStringLiteral("today"), visit.word("page.today"),
                           std::move(*part));
  if (on_wall) reply.refresh_seconds = kWallSeconds;
  return reply;
}

}  // namespace lardiner::station
