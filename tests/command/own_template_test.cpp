// A container that names its label template: the kitchen's own or a shipped one, or a name that nobody knows.
#include <QDir>

#include "small_kitchen.h"

using namespace lardiner::command;

namespace {

// The shipped template of an inside label without the place of a fact that the tubs do not need, and in another order.
const QByteArray kPlain =
    "margin = \"1 mm\"\nleast_x_height = \"1.2 mm\"\n"
    "[[block]]\nband = true\nsize = [12, 17, 44]\n"
    "[[block]]\nfacts = [\"name\"]\nweight = \"bold\"\nsize = [10, 12, 20]\n"
    "[[block]]\nfacts = [\"contains\", \"keep-at\", \"made\", \"net\", \"used-for\", \"previously-frozen\"]\n"
    "size = [7, 8, 12]\n"
    "[foot]\nsize = [7, 7, 12]\n";

// The small kitchen, in which the tubs of lime butter name a template.
struct NamedTemplate : SmallKitchen {
  explicit NamedTemplate(const QString& name) {
    const QString container = "container = { kind = \"tub\", holds = \"500 g\", ";
    folder.put_fault("kitchen/products.toml", container, container + "template = \"" + name + "\", ");
  }
  void add(const QString& name, const QByteArray& toml) const {
    REQUIRE(QDir(folder.path("kitchen")).mkpath("templates/labels"));
    folder.write("kitchen/templates/labels/" + name, toml);
  }
  Ran check() const { return folder.lardiner({"--kitchen", "kitchen", "check"}); }
  // Of the first label of lime butter: what stands first on it.
  QString first_words() const {
    const Ran ran = labels({"records.csv", "--out", "out"});
    INFO(ran.err.toStdString());
    REQUIRE(ran.status == 0);
    for (const Page& page : page_texts(folder, "out/lid.pdf"))
      if (page.text.contains("Lime butter")) return page.text.left(11);
    return {};
  }
};

}  // namespace

TEST_CASE("a container's label is laid out by the template that the container names", "[command][templates]") {
  CHECK(NamedTemplate("inside").first_words() == "Lime butter");
  const NamedTemplate own("plain-tub");
  own.add("plain-tub.toml", kPlain);
  CHECK(own.check().status == 0);
  CHECK(own.first_words().startsWith("USE BY"));
}

TEST_CASE("a template that there is not is refused at its place, with the nearest name", "[command][templates]") {
  const NamedTemplate kitchen("insid");
  const QString text = fault_text("kitchen/products.toml", kitchen.folder.read("kitchen/products.toml"), "\"insid\"",
                                  "there is no label template \"insid\"", "did you mean \"inside\"?");
  const Ran checked = kitchen.check();
  CHECK(checked.status == 1);
  CHECK(checked.err == text);
  const Ran ran = kitchen.labels({"records.csv", "--out", "out"});
  CHECK(ran.status == 1);
  CHECK(ran.err == text);
  CHECK(kitchen.as_it_was());
  const NamedTemplate far("tub-of-butter");
  CHECK(far.check().err.endsWith("  the templates are: finisher, hold, inside, pad, sale\n"));
}

TEST_CASE("a path is not the name of a template", "[command][templates]") {
  CHECK(NamedTemplate("../labels/inside").check().status == 1);
}

TEST_CASE("a template that a container names is read by check, broken or not", "[command][templates]") {
  const NamedTemplate kitchen("plain-tub");
  kitchen.add("plain-tub.toml", kPlain + "colour = \"red\"\n");
  const Ran ran = kitchen.check();
  CHECK(ran.status == 1);
  CHECK(ran.err.startsWith("kitchen/templates/labels/plain-tub.toml:15:1: the foot cannot have \"colour\"\n"));
}
