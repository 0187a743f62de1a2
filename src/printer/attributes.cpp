// The attributes of an IPP answer as values of ours.
#include "printer/attributes.h"

#include <algorithm>
#include <cmath>

namespace lardiner::printer {

namespace {

constexpr double kCentimetresPerInch = 2.54;

ipp_attribute_t* find(const Message& answer, const char* name) {
  return ippFindAttribute(answer.get(), name, IPP_TAG_ZERO);
}

bool is_text(ipp_attribute_t* attribute) {
  const ipp_tag_t tag = ippGetValueTag(attribute);
  return (tag >= IPP_TAG_TEXT && tag <= IPP_TAG_MIMETYPE) || tag == IPP_TAG_TEXTLANG || tag == IPP_TAG_NAMELANG;
}

bool is_number(ipp_attribute_t* attribute) {
  const ipp_tag_t tag = ippGetValueTag(attribute);
  return tag == IPP_TAG_INTEGER || tag == IPP_TAG_ENUM;
}

// The least and the most of one side.
struct Side {
  int least = 0, most = 0;
};

std::optional<Side> side(ipp_t* size, const char* name) {
  ipp_attribute_t* attribute = ippFindAttribute(size, name, IPP_TAG_ZERO);
  if (attribute == nullptr) return std::nullopt;
  if (is_number(attribute)) return Side{ippGetInteger(attribute, 0), ippGetInteger(attribute, 0)};
  if (ippGetValueTag(attribute) != IPP_TAG_RANGE) return std::nullopt;
  int most = 0;
  const int least = ippGetRange(attribute, 0, &most);
  return Side{least, most};
}

// A media-size itself, or the one in a media-col.
ipp_t* size_in(ipp_t* collection) {
  ipp_attribute_t* inner = ippFindAttribute(collection, "media-size", IPP_TAG_BEGIN_COLLECTION);
  return inner == nullptr ? collection : ippGetCollection(inner, 0);
}

}  // namespace

QStringList texts_of(const Message& answer, const char* name) {
  ipp_attribute_t* attribute = find(answer, name);
  QStringList out;
  if (attribute == nullptr || !is_text(attribute)) return out;
  for (int i = 0; i < ippGetCount(attribute); ++i) out << QString::fromUtf8(ippGetString(attribute, i, nullptr));
  return out;
}

QString text_of(const Message& answer, const char* name) { return texts_of(answer, name).value(0); }

std::optional<int> number_of(const Message& answer, const char* name) {
  ipp_attribute_t* attribute = find(answer, name);
  if (attribute == nullptr || !is_number(attribute)) return std::nullopt;
  return ippGetInteger(attribute, 0);
}

std::optional<int> most_of(const Message& answer, const char* name) {
  ipp_attribute_t* attribute = find(answer, name);
  if (attribute == nullptr || ippGetValueTag(attribute) != IPP_TAG_RANGE) return number_of(answer, name);
  int most = 0;
  ippGetRange(attribute, 0, &most);
  return most;
}

bool truth_of(const Message& answer, const char* name, bool unless_said) {
  ipp_attribute_t* attribute = find(answer, name);
  if (attribute == nullptr || ippGetValueTag(attribute) != IPP_TAG_BOOLEAN) return unless_said;
  return ippGetBoolean(attribute, 0) != 0;
}

std::vector<int> resolutions_of(const Message& answer, const char* name) {
  ipp_attribute_t* attribute = find(answer, name);
  std::vector<int> out;
  if (attribute == nullptr || ippGetValueTag(attribute) != IPP_TAG_RESOLUTION) return out;
  for (int i = 0; i < ippGetCount(attribute); ++i) {
    int down = 0;
    ipp_res_t units = IPP_RES_PER_INCH;
    const int across = ippGetResolution(attribute, i, &down, &units);
    if (across != down) continue;
    out.push_back(units == IPP_RES_PER_CM ? static_cast<int>(std::lround(across * kCentimetresPerInch)) : across);
  }
  return out;
}

Sizes sizes_of(const Message& answer, const char* name) {
  ipp_attribute_t* attribute = find(answer, name);
  Sizes out;
  if (attribute == nullptr || ippGetValueTag(attribute) != IPP_TAG_BEGIN_COLLECTION) return out;
  for (int i = 0; i < ippGetCount(attribute); ++i) {
    ipp_t* size = size_in(ippGetCollection(attribute, i));
    const auto x = side(size, "x-dimension"), y = side(size, "y-dimension");
    if (!x || !y || x->most <= 0 || y->most <= 0) continue;
    if (x->least == x->most && y->least == y->most)
      out.fixed.push_back({x->most, y->most});
    else
      out.ranges.push_back({{x->least, y->least}, {x->most, y->most}});
  }
  return out;
}

void ask_for(const Message& request, const std::vector<const char*>& names) {
  ippAddStrings(request.get(), IPP_TAG_OPERATION, IPP_TAG_KEYWORD, "requested-attributes",
                static_cast<int>(names.size()), nullptr, names.data());
}

}  // namespace lardiner::printer
