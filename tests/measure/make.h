// Short ways to write amounts in the tests of this layer.
#pragma once

#include <ostream>

#include "measure/quantity.h"
#include "measure/temperature.h"
#include "show.h"

namespace lardiner::measure {

inline Quantity grams(std::int64_t count) { return quantity(Ratio(count, 1), Unit::Gram); }
inline Quantity pounds(std::int64_t count) { return quantity(Ratio(count, 1), Unit::Pound); }
inline Quantity ounces(std::int64_t count) { return quantity(Ratio(count, 1), Unit::Ounce); }
inline Quantity millilitres(std::int64_t count) { return quantity(Ratio(count, 1), Unit::Millilitre); }

inline std::ostream& operator<<(std::ostream& out, Ratio r) { return out << r.num() << '/' << r.den(); }
inline std::ostream& operator<<(std::ostream& out, Quantity q) {
  return out << q.amount << " of dimension " << static_cast<int>(q.dimension);
}
inline std::ostream& operator<<(std::ostream& out, Temperature t) {
  return out << t.tenths << (t.scale == Scale::Celsius ? " tenths C" : " tenths F");
}

}  // namespace lardiner::measure
