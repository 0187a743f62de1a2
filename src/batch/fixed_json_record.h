// The fields of a record and of what was computed of it, dates apart, in the ledger's text; for fixed_json.cpp.
#pragma once

#include "batch/fixed_json_values.h"

namespace lardiner::batch {

template <class A>
void fields(A& a, Of<A, StatedEnd>& stated) {
  a.must("end", stated.end);
  a.usual("is_date", stated.is_date, true);
  a.usual("kind", stated.kind, book::EndKind::UseBy);
}

template <class A>
void fields(A& a, Of<A, Input>& input) {
  a.must("item", input.item);
  a.text("supplier_item", input.supplier_item);
  a.text("lot", input.lot);
  a.texts("candidates", input.candidates);
  a.maybe("quantity", input.quantity);
  a.maybe("stated", input.stated);
  a.maybe("opened_at", input.opened_at);
  a.maybe("frozen_at", input.frozen_at);
  a.maybe("thawed_at", input.thawed_at);
  a.text("instead_of", input.instead_of);
  a.text("agreed_by", input.agreed_by);
}

template <class A>
void fields(A& a, Of<A, CookReading>& reading) {
  a.must("at", reading.at);
  a.must("core", reading.core);
  a.usual("seconds", reading.seconds, 0);
  a.usual("microwave", reading.microwave, false);
  a.usual("stood_seconds", reading.stood_seconds, 0);
}

template <class A>
void fields(A& a, Of<A, CoolReading>& reading) {
  a.must("at", reading.at);
  a.must("core", reading.core);
}

template <class A>
void fields(A& a, Of<A, ContainerGroup>& group) {
  a.must("count", group.count);
  a.text("kind", group.kind);
  a.must("holds", group.holds);
}

template <class A>
void fields(A& a, Of<A, Record>& record) {
  a.must("deed", record.deed);
  a.must("item", record.item);
  a.maybe("number", record.number);
  a.text("lot", record.lot);
  a.maybe("quantity", record.quantity);
  a.must("made_at", record.made_at);
  a.usual("time_known", record.time_known, true);
  a.maybe("made_to", record.made_to);
  a.maybe("pad_day", record.pad_day);
  a.maybe("recorded_at", record.recorded_at);
  a.text("by", record.by);
  a.list("containers", record.containers);
  a.list("inputs", record.inputs);
  a.list("cooked", record.cooked);
  a.list("cooled", record.cooled);
  a.text("corrective_action", record.corrective_action);
  a.text("corrective_by", record.corrective_by);
  a.list("events", record.events);
  a.text("site", record.site);
  a.text("order", record.order);
  a.text("supplier_item", record.supplier_item);
  a.text("supplier_lot", record.supplier_lot);
  a.maybe("stated", record.stated);
  a.maybe("opened_at", record.opened_at);
}

template <class A>
void fields(A& a, Of<A, book::Declaration>& declaration) {
  a.must("substance", declaration.substance);
  a.text("species", declaration.species);
  a.maybe("mg_per_kg", declaration.mg_per_kg);
  a.text("exemption", declaration.exemption);
}

template <class A>
void fields(A& a, Of<A, book::Declared>& declared) {
  a.must("stated", declared.stated);
  a.list("contains", declared.contains);
  a.list("may_contain", declared.may_contain);
}

template <class A>
void fields(A& a, Of<A, Difference>& difference) {
  a.must("item", difference.item);
  a.text("instead_of", difference.instead_of);
  a.list("adds", difference.adds);
  a.list("removes", difference.removes);
  a.text("agreed_by", difference.agreed_by);
}

// Parts that are there and empty are told from parts that only the book knows.
template <class A>
void parts_field(A& a, Of<A, std::shared_ptr<const std::vector<Part>>>& parts) {
  std::optional<std::vector<Part>> there;
  if (!A::kReads && parts) there = *parts;
  a.maybe("parts", there);
  if constexpr (A::kReads)
    if (there) parts = std::make_shared<const std::vector<Part>>(std::move(*there));
}

template <class A>
void fields(A& a, Of<A, Part>& part) {
  a.must("item", part.item);
  a.text("supplier_item", part.supplier_item);
  a.maybe("quantity", part.quantity);
  parts_field(a, part.parts);
  a.maybe("made", part.made);
}

template <class A>
void fields(A& a, Of<A, Cooling>& cooling) {
  a.must("state", cooling.state);
  a.text("why", cooling.why);
  a.maybe("due", cooling.due);
}

template <class A>
void fields(A& a, Of<A, problem::Error>& error) {
  a.must("code", error.code);
  a.must("what", error.what);
  a.text("hint", error.hint);
}

}  // namespace lardiner::batch
