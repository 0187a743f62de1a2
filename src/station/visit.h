// One request on its way to its page: the desk that serves it, the language, and who asks.
#pragma once

#include <optional>

#include "station/routes.h"

namespace lardiner::station {

class Visit {
 public:
  Visit(const Shop& shop, Desk& desk, const Request& request);

  const Request& request() const { return request_; }
  Desk& desk() const { return desk_; }
  const Shop& shop() const { return shop_; }
  const words::Language& language() const { return *language_; }
  QString word(const char* key) const { return language_->word(QString::fromLatin1(key)); }

  bool signed_in() const { return who_.has_value(); }
  const Who& who() const { return *who_; }  ///< REQUIRES: signed_in

  /// What the form says; empty where it does not.
  QString field(const QString& name) const { return request_.form.value(name); }
  /// The lot with this code, of the item that the form or the address names.
  std::optional<ledger::LotName> lot_named(const QString& code) const;

  /// "2026-11-25 21:50" in the kitchen, as a form writes a time.
  QString now_text() const;

  /// What the book calls the item of a lot in the language; where it does not, the name that was recorded, else the id.
  QString name_of(const ledger::LotName& lot) const;
  QString name_of(const QString& item) const;

  /// The page `name` in the language, in its frame.
  Reply page(const QString& name, const QString& title, Part part, int status = 200) const;
  /// A page that says what went wrong, and where to go on.
  Reply trouble(int status, const problem::Errors& errors) const;
  Reply message(int status, const char* key) const;

 private:
  void add_notices(Part& part) const;

  const Shop& shop_;
  Desk& desk_;
  const Request& request_;
  const words::Language* language_;
  std::optional<Who> who_;
};

/// Whether somebody of the kitchen has the initials: the book may have lost them since they got a PIN.
bool is_of_kitchen(const book::Book& book, const QString& initials);

/// 200 without errors; 503 where the machine failed, its disk is full; else 422, and what was typed is to be mended.
int status_of(const problem::Errors& errors);

/// What was recorded, with its warnings, as a page lists it: rows of "RECORDED", "WARNING" and "CONCERNED".
void add_recorded(const Visit& visit, Part& part, const Recorded& recorded);

/// Problems as a page lists them.
void add_problems(Part& part, const problem::Errors& errors);

/// What an address names after `prefix`, decoded: a lot of a supplier or a note may have a stroke. Nothing where it
/// begins otherwise or nothing follows.
std::optional<QString> rest_after(const QString& path, const QString& prefix);

/// The labels that a form asks for. Errors: containers that are no numbers.
problem::ExpectedAll<ToPrint> labels_wished(const Visit& visit, const QString& lot);
/// Asks the form's printer for them, and leads to the print's page. Errors: those of Desk::ask_print.
problem::ExpectedAll<Reply> print_labels(const Visit& visit, const ToPrint& wish);
/// Rows of "PRINTER_OFFER", the printers to choose from, with what a form chose among them.
void add_printers(Part& part, const std::vector<PrinterShown>& printers, const Fields& chosen);
/// Rows of "PRINT": prints that are not done.
void add_prints(const Visit& visit, Part& part, const std::vector<PrintShown>& prints);

/// The page of a lot with what could not be done. REQUIRES: it is recorded.
Reply lot_with_problems(const Visit& visit, const QString& code, const QString& item, const problem::Errors& errors);

/// The page of a dispatch note, with what was just recorded with it.
Reply note_recorded(const Visit& visit, const QString& number, const Recorded& recorded);

// The pages, one function each; in files of their own.
Reply today(const Visit& visit, bool on_wall);
Reply find(const Visit& visit);
Reply lot(const Visit& visit, const QString& code);
Reply label_address(const Visit& visit);
Reply happened(const Visit& visit, const QString& code);
Reply labels(const Visit& visit, const QString& code);
Reply recall_page(const Visit& visit, const QString& code);
Reply recall(const Visit& visit, const QString& code);
Reply recall_pdf(const Visit& visit, const QString& code);
Reply print_page(const Visit& visit, const QString& id);
Reply end_print(const Visit& visit, const QString& id);
Reply printers_page(const Visit& visit);
Reply load_printer(const Visit& visit);
Reply lineage_page(const Visit& visit, const QString& code);
Reply sheets_page(const Visit& visit);
Reply day_chosen(const Visit& visit);
Reply day_page(const Visit& visit, const QString& day);
Reply review_day(const Visit& visit, const QString& day);
Reply note_chosen(const Visit& visit);
Reply note_page(const Visit& visit, const QString& number);
Reply note_went(const Visit& visit, const QString& number);
Reply dispatch_page(const Visit& visit);
Reply dispatch(const Visit& visit);
Reply close_page(const Visit& visit);
Reply close_day(const Visit& visit);
Reply sign_in_page(const Visit& visit);
/// Instead of taking a form: it goes along while somebody signs in. Not with a picture, which is taken again.
Reply sign_in_first(const Visit& visit);
Reply sign_in(const Visit& visit);
Reply sign_out(const Visit& visit);
Reply make_list(const Visit& visit);
Reply make_form(const Visit& visit, const QString& product);
Reply make(const Visit& visit, const QString& product);
Reply receive_list(const Visit& visit);
Reply receive_form(const Visit& visit, const QString& item);
Reply receive(const Visit& visit, const QString& item);
Reply rounds_page(const Visit& visit);
Reply rounds(const Visit& visit);
Reply correct_page(const Visit& visit, const QString& code);
Reply correct(const Visit& visit, const QString& code);
Reply open_list(const Visit& visit);
Reply open_package(const Visit& visit, const QString& lot);
Reply label_package(const Visit& visit, const QString& lot);
Reply scan_page(const Visit& visit);
Reply scan(const Visit& visit);

}  // namespace lardiner::station
