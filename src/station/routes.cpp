// Which page answers which address; what changes something needs a session and its token.
#include "station/routes.h"

#include <arpa/inet.h>

#include <QUrl>
#include <algorithm>

#include "station/api.h"
#include "station/visit.h"

namespace lardiner::station {

namespace {

const QString kApi = QStringLiteral("/api/");

Reply plain(int status, const char* text) {
  Reply reply;
  reply.status = status;
  reply.type = "text/plain; charset=utf-8";
  reply.body = text;
  return reply;
}

// The name in "tablet.example:8443" or "[::1]:8420".
QString host_name(const QString& host) { return QUrl(QStringLiteral("http://") + host).host(); }

bool is_address(const QString& name) {
  in6_addr into{};
  const QByteArray text = name.toLatin1();
  return inet_pton(AF_INET, text.constData(), &into) == 1 || inet_pton(AF_INET6, text.constData(), &into) == 1;
}

// An address, or a name that the kitchen gave the station. Any other is of a page elsewhere that points its own name
// here, to be taken for this one.
bool is_ours(const Shop& shop, const QString& host) {
  const QString name = host_name(host);
  return name == QLatin1String("localhost") || is_address(name) || shop.hosts.contains(name, Qt::CaseInsensitive);
}

std::optional<Reply> file(const Shop& shop, const QString& path) {
  const auto found = shop.files.constFind(path.mid(1));
  if (found == shop.files.constEnd()) return std::nullopt;
  Reply reply;
  reply.kept = true;
  reply.body = *found;
  reply.type = path.endsWith(QLatin1String(".css"))    ? "text/css; charset=utf-8"
               : path.endsWith(QLatin1String(".json")) ? "application/json"
               : path.endsWith(QLatin1String(".js"))   ? "text/javascript; charset=utf-8"
                                                       : "font/ttf";
  return reply;
}

// A choice of language is kept by the browser, and leads back to the page.
std::optional<Reply> chosen_language(const Visit& visit) {
  const QString code = visit.request().query.value(QStringLiteral("language"));
  const auto& all = visit.desk().languages();
  const bool there =
      std::any_of(all.begin(), all.end(), [&](const words::Language& one) { return one.code() == code; });
  if (visit.request().path != QLatin1String("/language") || !there) return std::nullopt;
  Reply reply = redirection(own_address(visit.request().query.value(QStringLiteral("back"))));
  reply.cookies << "language=" + code.toLatin1() + "; Path=/; Max-Age=31536000; HttpOnly; SameSite=Strict";
  return reply;
}

Reply get(const Visit& visit) {
  const QString& path = visit.request().path;
  if (path.startsWith(kApi)) return api(visit);
  if (path == QLatin1String("/")) return today(visit, false);
  if (path == QLatin1String("/wall")) return today(visit, true);
  if (path == QLatin1String("/find")) return find(visit);
  if (path == QLatin1String("/sign-in")) return sign_in_page(visit);
  if (path == QLatin1String("/scan")) return scan_page(visit);
  if (path == QLatin1String("/make")) return make_list(visit);
  if (path == QLatin1String("/open")) return open_list(visit);
  if (const auto package = rest_after(path, QStringLiteral("/open/"))) return open_package(visit, *package);
  if (const auto product = rest_after(path, QStringLiteral("/make/"))) return make_form(visit, *product);
  if (const auto code = rest_after(path, QStringLiteral("/lot/"))) return lot(visit, *code);
  if (const auto code = rest_after(path, QStringLiteral("/recall/"))) return recall_page(visit, *code);
  if (const auto code = rest_after(path, QStringLiteral("/correct/"))) return correct_page(visit, *code);
  if (const auto code = rest_after(path, QStringLiteral("/recall-sheet/"))) return recall_pdf(visit, *code);
  if (path == QLatin1String("/receive")) return receive_list(visit);
  if (const auto item = rest_after(path, QStringLiteral("/receive/"))) return receive_form(visit, *item);
  if (path == QLatin1String("/rounds")) return rounds_page(visit);
  if (path == QLatin1String("/printers")) return printers_page(visit);
  if (path == QLatin1String("/sheets")) return sheets_page(visit);
  if (const auto code = rest_after(path, QStringLiteral("/lineage/"))) return lineage_page(visit, *code);
  if (path == QLatin1String("/day")) return day_chosen(visit);
  if (path == QLatin1String("/note")) return note_chosen(visit);
  if (path == QLatin1String("/dispatch")) return dispatch_page(visit);
  if (path == QLatin1String("/close")) return close_page(visit);
  if (const auto day = rest_after(path, QStringLiteral("/day/"))) return day_page(visit, *day);
  if (const auto number = rest_after(path, QStringLiteral("/note/"))) return note_page(visit, *number);
  if (const auto id = rest_after(path, QStringLiteral("/print/"))) return print_page(visit, *id);
  if (path.startsWith(QLatin1String("/01/"))) return label_address(visit);
  if (const auto chosen = chosen_language(visit)) return *chosen;
  return visit.message(404, "page.no_such_page");
}

// A form must come from a page of this station.
bool is_from_elsewhere(const Request& request) {
  return !request.origin.isEmpty() && QUrl(request.origin).authority() != request.host;
}

Reply refusal(const Visit& visit, int status, const char* key) {
  const bool program = visit.request().path.startsWith(kApi);
  return program ? api_problem(status, visit.word(key)) : visit.message(status, key);
}

// And from one that was opened by who is signed in.
std::optional<Reply> refused(const Visit& visit) {
  const Request& request = visit.request();
  const bool program = request.path.startsWith(kApi);
  if (!visit.signed_in()) return program ? refusal(visit, 401, "page.sign_in_first") : sign_in_first(visit);
  const QString given = request.csrf.isEmpty() ? request.form.value(QStringLiteral("csrf")) : request.csrf;
  if (!SignIn::csrf_matches(visit.who(), given.toLatin1())) return refusal(visit, 403, "page.from_elsewhere");
  return std::nullopt;
}

Reply post(const Visit& visit) {
  const QString& path = visit.request().path;
  if (is_from_elsewhere(visit.request())) return refusal(visit, 403, "page.from_elsewhere");
  if (path == QLatin1String("/sign-in")) return sign_in(visit);
  if (const auto reply = refused(visit)) return *reply;
  if (path.startsWith(kApi)) return api(visit);
  if (path == QLatin1String("/sign-out")) return sign_out(visit);
  if (path == QLatin1String("/scan")) return scan(visit);
  if (const auto package = rest_after(path, QStringLiteral("/open/"))) return label_package(visit, *package);
  if (const auto product = rest_after(path, QStringLiteral("/make/"))) return make(visit, *product);
  if (const auto code = rest_after(path, QStringLiteral("/happened/"))) return happened(visit, *code);
  if (const auto code = rest_after(path, QStringLiteral("/recall/"))) return recall(visit, *code);
  if (const auto code = rest_after(path, QStringLiteral("/correct/"))) return correct(visit, *code);
  if (const auto item = rest_after(path, QStringLiteral("/receive/"))) return receive(visit, *item);
  if (path == QLatin1String("/rounds")) return rounds(visit);
  if (path == QLatin1String("/printers")) return load_printer(visit);
  if (path == QLatin1String("/dispatch")) return dispatch(visit);
  if (path == QLatin1String("/close")) return close_day(visit);
  if (const auto day = rest_after(path, QStringLiteral("/day/"))) return review_day(visit, *day);
  if (const auto number = rest_after(path, QStringLiteral("/note/"))) return note_went(visit, *number);
  if (const auto id = rest_after(path, QStringLiteral("/print/"))) return end_print(visit, *id);
  if (const auto code = rest_after(path, QStringLiteral("/labels/"))) return labels(visit, *code);
  return visit.message(404, "page.no_such_page");
}

}  // namespace

Reply answer(const Shop& shop, Desk& desk, const Request& request) {
  if (!is_ours(shop, request.host)) return plain(421, "This station does not go by that name.\n");
  if (request.method == Request::Method::Get)
    if (const auto sent = file(shop, request.path)) return *sent;
  desk.begin();
  const Visit visit(shop, desk, request);
  return request.method == Request::Method::Post ? post(visit) : get(visit);
}

Reply out_of_order(const problem::Errors& errors) {
  Reply reply = plain(503, "");
  reply.body = "The station is out of order.\n\n" + problem::text(errors).toUtf8();
  return reply;
}

}  // namespace lardiner::station
