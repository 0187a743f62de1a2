// The GS1 application identifiers: format of each, whether a separator follows, and its place in a Digital Link.
#pragma once

#include <QString>
#include <QStringList>
#include <QStringView>
#include <vector>

namespace lardiner::gs1 {

/// Which characters a component may hold (GS1 General Specifications 7.11).
enum class CharacterSet {
  Digits,  ///< N
  Set82,   ///< X: letters, digits and ! " % & ' ( ) * + , - . / : ; < = > ? _
  Set39,   ///< Y: capital letters, digits and # - /
  Set64    ///< Z: letters, digits, - _ and = for filling up
};

/// One part of a value; only the last may vary in length, and no part that is needed follows an optional one.
struct Component {
  CharacterSet characters = CharacterSet::Digits;
  int shortest = 1;
  int longest = 1;
  bool optional = false;
  QStringList checks;  ///< names of the checks of its content, see value.h
};

/// One application identifier, or a range with one meaning (3100 to 3105: the last digit is the decimal places).
struct Identifier {
  QString first;
  QString last;               ///< equal to `first` where there is only one
  QString title;              ///< "BATCH/LOT"
  bool fixed_length = false;  ///< of the predefined lengths: no separator follows
  bool attribute = false;     ///< may stand in the query of a Digital Link
  bool primary_key = false;   ///< may open a Digital Link
  QStringList qualifiers;     ///< of a primary key: orders of qualifiers, each "22,10,21"
  std::vector<Component> components;
  QString needs;     ///< "01,02+37": the element needs one of these groups beside it; empty: none
  QString excludes;  ///< "01,394n": the element stands beside none of these

  int shortest() const;
  int longest() const;
};

/// All of them in ascending order, as GS1 assigned them; built once.
const std::vector<Identifier>& identifiers();

/// The one that `ai` belongs to, or nullptr where GS1 has assigned none. The pointer lives as long as the program.
const Identifier* identifier(QStringView ai);

/// Whether a character belongs to the set.
bool in_set(QChar letter, CharacterSet characters);

}  // namespace lardiner::gs1
