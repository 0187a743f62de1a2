// Labels in each shipped language: its words, dates, numbers and signs, and what a label in two languages says twice.
#include "kitchen.h"

using namespace lardiner;
using namespace lardiner::facts;
using namespace lardiner::facts::tray;

namespace {

const char* const kUnreviewed[] = {"es", "fr", "pt", "vi", "el", "ru", "zh"};

// The small kitchen with `code` in the place of Spanish: its texts stay as they are, for the words are looked at here.
// Its own language is `first`; the bag of two languages is labelled in `bag`.
book::Book kitchen_in(const QByteArray& code, const QByteArray& first, const QByteArray& bag, bool reviewed) {
  const QByteArray second = first == "en" ? code : QByteArray("en");
  std::vector<book::SourceFile> files =
      kitchen_files(reviewed ? "words_reviewed_by = { " + code + " = \"L. Valdivar\" }\n" : QByteArray());
  for (book::SourceFile& file : files) {
    file.bytes.replace("languages = [\"en\", \"es\"]\n\n", "languages = " + bag + "\n\n");
    file.bytes.replace("languages = [\"en\", \"es\"]\nunits",
                       "languages = [\"" + first + "\", \"" + second + "\"]\nunits");
    file.bytes.replace(" es = ", ' ' + code + " = ");
  }
  return read_files(files);
}

// All its labels in `code` alone.
book::Book kitchen_of(const char* code) { return kitchen_in(code, code, QByteArray("[\"") + code + "\"]", true); }

batch::Batch bag() {
  batch::Batch out =
      batch_of(QStringLiteral("lime-butter"), QStringLiteral("bag"), amount(10, measure::Unit::Kilogram));
  out.record.site = QStringLiteral("harbour");
  out.declared = {true, {holds("milk"), holds("wheat")}, {holds("egg")}};
  return out;
}

batch::Batch frozen(int days_left) {
  batch::Batch out = butter();
  happens(out, batch::Happening::Frozen, at(2026, 11, 25, 16));
  out.use_bys = {frozen_with(QDate(2026, 11, 25), days_left)};
  return out;
}

bool said_in_first_only(FactId id) {
  for (const FactId once : {FactId::Net, FactId::NetDeclared, FactId::Site, FactId::UsedFor, FactId::Business,
                            FactId::Lot, FactId::Serial, FactId::ContainerOf})
    if (id == once) return true;
  return false;
}

}  // namespace

TEST_CASE("words of a shipped language that nobody of the kitchen reviewed are refused, and printed once somebody did",
          "[facts][languages][refused]") {
  for (const QByteArray code : kUnreviewed) {
    const QByteArray both = "[\"en\", \"" + code + "\"]";
    const QString text = refused(bag(), kitchen_in(code, "en", both, false));
    INFO(text.toStdString());
    CHECK(text.contains(
        QStringLiteral("the safety words of language \"%1\" are not reviewed\n").arg(QLatin1String(code))));
    CHECK(text.contains(QStringLiteral("words_reviewed_by = { %1 = \"…\" }").arg(QLatin1String(code))));
    CHECK(refused(bag(), kitchen_in(code, "en", both, true)).isEmpty());
  }
}

TEST_CASE("the use-by and what is in it are said in each language's words, order and signs", "[facts][languages]") {
  const auto label = [](const char* code) {
    const LabelRun run = run_of(bag(), kitchen_of(code));
    return words_of(run, FactId::DateCaption) + u'|' + words_of(run, FactId::Date) + u'|' +
           words_of(run, FactId::Year) + u'|' + words_of(run, FactId::Contains) + u'|' +
           words_of(run, FactId::MayContain);
  };
  CHECK(label("es") == "USAR HASTA|MAR 01 DIC|2026|CONTIENE leche, trigo|Puede contener huevo");
  CHECK(label("fr") == "À CONSOMMER JUSQU'AU|MAR 01 DÉC|2026|CONTIENT : lait, blé|Peut contenir : œufs");
  CHECK(label("pt") == "CONSUMIR ATÉ|TER 01 DEZ|2026|CONTÉM: leite, trigo|Pode conter: ovos");
  CHECK(label("vi") == "HẠN SỬ DỤNG|THỨ BA 01 THÁNG 12|2026|CÓ CHỨA: sữa, lúa mì|Có thể chứa: trứng");
  CHECK(label("el") == "ΑΝΑΛΩΣΗ ΕΩΣ|ΤΡΙ 01 ΔΕΚ|2026|ΠΕΡΙΕΧΕΙ: γάλα, σιτάρι|Μπορεί να περιέχει: αυγά");
  CHECK(label("ru") == "ГОДЕН ДО|ВТ 01 ДЕК|2026|СОДЕРЖИТ: молоко, пшеница|Может содержать: яйца");
  CHECK(label("zh") == "此日期或之前食用|12月1日 周二|2026年|含有：奶类、小麦|可能含有：蛋类");
}

TEST_CASE("amounts, times and pieces are written as each language writes them", "[facts][languages][number]") {
  const auto net = [](const char* code) {
    batch::Batch batch =
        batch_of(QStringLiteral("lime-butter"), QStringLiteral("bag"), amount(15, measure::Unit::Kilogram));
    return words_of(run_of(batch, kitchen_of(code)), FactId::Net);
  };
  CHECK(net("fr") == "1,5 kg (3 lb 4,9 oz)");
  CHECK(net("ru") == "1,5 кг (3 lb 4,9 oz)");
  CHECK(net("zh") == "1.5 kg (3 lb 4.9 oz)");
  const auto count = [](const char* code) { return words_of(run_of(parcels(), kitchen_of(code)), FactId::Count); };
  CHECK(count("ru") == "24 штуки");
  CHECK(count("el") == "24 τεμάχια");
  CHECK(count("zh") == "24件");
  const auto hold = [](const char* code) {
    return words_of(run_of(parcels(), kitchen_of(code)), FactId::HoldFinished);
  };
  CHECK(hold("ru") == "Держать не дольше 45 мин. Готово _______ выбросить до _______");
  CHECK(hold("zh") == "最多存放45分钟。完成 _______ 丢弃期限 _______");
}

TEST_CASE("a figure and its unit stay on one line, for sale too", "[facts][languages][number]") {
  const QChar no_break(0x00A0);
  const LabelRun run = run_of(butter_for_sale());
  const Fact* net = fact(run, FactId::NetDeclared);
  REQUIRE(net);
  CHECK(net->paragraphs.front().front().text == QStringLiteral("Net Wt 7%1oz (199%1g)").arg(no_break));
}

TEST_CASE("how to finish it reads as one text in each language", "[facts][languages][finishing]") {
  const auto steps = [](const char* code) { return words_of(run_of(parcels(), kitchen_of(code)), FactId::Finishing); };
  CHECK(steps("fr") ==
        "Four, sortie du réfrigérateur : 190 °C (375 °F), 16 à 18 min, CUIRE JUSQU'À 74 °C (165 °F) pendant 15 s. "
        "Doradas. Laisser reposer 2 min.");
  CHECK(steps("ru") ==
        "Духовая печь, из холодильника: 190 °C (375 °F), 16–18 мин, ГОТОВИТЬ ДО 74 °C (165 °F) и держать 15 с. "
        "Doradas. Дать постоять 2 мин.");
  CHECK(
      steps("zh") ==
      "烤箱，从冷藏取出：190 °C (375 °F)，16至18分钟，煮熟至中心温度 74 °C (165 °F) 并保持15秒。Doradas。静置2分钟。");
}

TEST_CASE("brackets and lists of the ingredient statement are the language's own", "[facts][languages]") {
  CHECK(words_of(run_of(butter_for_sale(), kitchen_of("zh")), FactId::Ingredients) ==
        "配料：Mantequilla、Limón、Albaricoques（亚硫酸盐）。");
  CHECK(words_of(run_of(butter_for_sale(), kitchen_of("ru")), FactId::Ingredients) ==
        "Состав: Mantequilla, Limón, Albaricoques (сульфиты).");
}

TEST_CASE("the days left are counted in each language's forms, and one day is always told to be the last",
          "[facts][languages][plural]") {
  const auto left = [](const char* code, int days) {
    return words_of(run_of(frozen(days), kitchen_of(code)), FactId::DaysLeft);
  };
  CHECK(left("ru", 1) == "Остался 1 день: использовать в день разморозки");
  CHECK(left("ru", 3) == "Осталось 3 дня: день разморозки — день 1");
  CHECK(left("ru", 6) == "Осталось 6 дней: день разморозки — день 1");
  CHECK(left("ru", 21) == "Остался 21 день: день разморозки — день 1");
  CHECK(left("es", 1) == "Queda 1 día: usar el día de descongelar");
  CHECK(left("es", 4) == "Quedan 4 días: el de descongelar es el 1");
  CHECK(left("zh", 4) == "剩余4天：解冻当天为第1天");
}

TEST_CASE("whatever a label in two languages says of safety it says in both", "[facts][languages][property]") {
  batch::Batch thawed = bag();
  happens(thawed, batch::Happening::Frozen, at(2026, 11, 25, 16));
  happens(thawed, batch::Happening::Thawed, at(2026, 11, 28, 7));
  thawed.use_bys.front().previously_frozen = true;
  batch::Batch controlled = bag();
  happens(controlled, batch::Happening::TimeControl, at(2026, 11, 25, 16));
  controlled.use_bys = {until_time(at(2026, 11, 25, 20))};
  controlled.use_bys.front().time_control = true;
  batch::Batch iced = bag();
  happens(iced, batch::Happening::Frozen, at(2026, 11, 25, 16));
  iced.use_bys = {frozen_with(QDate(2026, 11, 25), 4)};
  iced.use_bys.front().never_past = QDate(2027, 1, 15);
  batch::Batch held = bag();
  held.missing = {QStringLiteral("missing.cook_reading")};
  held.refused.push_back({problem::Code::Missing, QStringLiteral("no reading"), {}, {}});
  LabelWish wish;
  wish.hold_labels = true;
  for (const QByteArray code : kUnreviewed) {
    const book::Book two = kitchen_in(code, "en", "[\"en\", \"" + code + "\"]", true);
    const std::vector<book::Book> alone{kitchen_in(code, "en", "[\"en\"]", true),
                                        kitchen_in(code, "en", "[\"" + code + "\"]", true)};
    for (const batch::Batch& batch : {bag(), thawed, controlled, iced, held}) {
      const LabelRun both = run_of(batch, two, wish);
      for (const book::Book& one : alone)
        for (const Fact& expected : run_of(batch, one, wish).facts) {
          if (said_in_first_only(expected.id)) continue;
          const Fact* printed = fact(both, expected.id);
          REQUIRE(printed);
          for (size_t i = expected.id == FactId::Made ? 1 : 0; i < expected.paragraphs.size(); ++i)
            CHECK(std::find(printed->paragraphs.begin(), printed->paragraphs.end(), expected.paragraphs[i]) !=
                  printed->paragraphs.end());
        }
    }
  }
}

TEST_CASE("when it was made is said once, when it was thawed in both languages", "[facts][languages]") {
  batch::Batch thawed = bag();
  happens(thawed, batch::Happening::Thawed, at(2026, 11, 28, 7));
  CHECK(words_of(run_of(thawed, bilingual_kitchen()), FactId::Made) ==
        "Made Wed 25 Nov 2026 10:40\nThawed Sat 28 Nov 2026 07:00\nDescongelado sáb 28 nov 2026 07:00");
}

TEST_CASE("a document in Chinese says which characters it is in", "[facts][languages]") {
  CHECK(run_of(bag(), kitchen_of("zh")).language == "zh-Hans");
  CHECK(run_of(bag(), kitchen_of("ru")).language == "ru");
}
