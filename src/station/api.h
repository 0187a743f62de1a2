// The same actions for programs, as JSON: described by templates/station/openapi.json, which is served too.
#pragma once

#include <QJsonObject>

#include "station/visit.h"

namespace lardiner::station {

/// REQUIRES: a path under /api/. A program signs in as a person does (POST /sign-in), sends the cookie, and with each
/// POST the token of its session in X-CSRF-Token. Problems: {"problems": [{"what": …, "hint": …}]}.
Reply api(const Visit& visit);

Reply api_reply(int status, const QJsonObject& object);
Reply api_problems(int status, const problem::Errors& errors);
/// 401, with how a program signs in.
Reply api_sign_in_first();
/// One problem, as all of them are told.
Reply api_problem(int status, const QString& what);

}  // namespace lardiner::station
