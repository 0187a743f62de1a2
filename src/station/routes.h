// Which page answers which address, and who may ask for it.
#pragma once

#include <QHash>

#include "station/desk.h"
#include "station/exchange.h"
#include "station/pages.h"
#include "station/sign_in.h"

namespace lardiner::station {

/// What every page is made with. All but the desk is shared by all threads.
struct Shop {
  const Pages& pages;
  SignIn& sign_in;
  QHash<QString, QByteArray> files;  ///< "style.css", "station.js": sent as they are
  QStringList hosts;                 ///< names besides addresses by which browsers may call the station
};

/// One request at one desk. Anybody may see what a label says and what is due; whatever changes something needs who is
/// signed in, and a form that this station gave them.
Reply answer(const Shop& shop, Desk& desk, const Request& request);

/// The page for a kitchen that cannot be served: its book or its ledger is at fault.
Reply out_of_order(const problem::Errors& errors);

}  // namespace lardiner::station
