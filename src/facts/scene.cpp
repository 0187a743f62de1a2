// What every fact of one label is computed from, and the phrases that several facts share.
#include "facts/scene.h"

namespace lardiner::facts {

QString Scene::text(const book::LocalText& texts, const QString& what, const problem::Place& place) const {
  const QString found = texts.in(words.code());
  if (found.isEmpty()) {
    errors.push_back(
        {problem::Code::Missing,
         QStringLiteral("%1 has no text in \"%2\", a language of its label").arg(what, words.code()), place,
         QStringLiteral("write it as { en = \"…\", %1 = \"…\" }, or take \"%1\" out of the container's languages")
             .arg(words.code())});
  }
  return found;
}

std::vector<Paragraph> plain(const QString& text) {
  return text.isEmpty() ? std::vector<Paragraph>{} : std::vector<Paragraph>{{Run{text, false}}};
}

std::vector<Paragraph> strong(const QString& text) {
  return text.isEmpty() ? std::vector<Paragraph>{} : std::vector<Paragraph>{{Run{text, true}}};
}

const book::AllergenList* destination_list(const Scene& scene) {
  const book::Site* site = scene.book.site(scene.batch.record.site);
  const QString id = site && !site->allergen_list.isEmpty() ? site->allergen_list : scene.book.kitchen.allergen_list;
  return scene.book.law.list(id);
}

}  // namespace lardiner::facts
