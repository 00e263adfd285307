#include <algorithm>
#include <stdexcept>

#include "seal/commitment.h"
#include "store/campaign.h"
#include "store/database.h"
#include "text/error.h"
#include "text/nearest.h"
#include "text/utf8.h"

namespace store {
namespace {

using plan::SealedPlan;

seal::Digest digest_of(const std::string& bytes) {
  seal::Digest digest{};
  if (bytes.size() == digest.size()) std::copy(bytes.begin(), bytes.end(), digest.begin());
  return digest;
}

SealedPlan plan_of(const Statement& row) {
  SealedPlan plan{row.bytes(0), row.bytes(1), digest_of(row.bytes(2)), digest_of(row.bytes(3))};
  if (seal::commitment(plan.text, plan.seed) != plan.commitment)
    throw text::BadInput(
        "plan " + text::quoted(plan.name) +
        " does not fit its commitment: the campaign was changed by something other than blindswap\n"
        "go back to a copy that was made before");
  return plan;
}

[[noreturn]] void refuse_unknown(const Database& database, const std::string& name) {
  std::vector<std::string> names;
  Statement rows(database, "SELECT name FROM plan ORDER BY number");
  while (rows.next()) names.push_back(rows.bytes(0));
  throw text::BadInput("there is no plan " + text::quoted(name) + text::did_you_mean(name, names));
}

class FileLog : public sitting::EventLog {
 public:
  FileLog(std::shared_ptr<Database> database, std::int64_t plan)
      : database_(std::move(database)),
        plan_(plan),
        insert_(*database_, "INSERT INTO event VALUES (?1, ?2, ?3, ?4, ?5)") {}

  std::vector<sitting::LoggedEvent> events(int sitting) const override {
    std::vector<sitting::LoggedEvent> events;
    Statement rows(*database_,
                   "SELECT text, head FROM event WHERE plan = ?1 AND sitting = ?2 ORDER BY number");
    rows.with(plan_, sitting);
    while (rows.next()) events.push_back({rows.bytes(0), rows.bytes(1)});
    return events;
  }

  void append(int sitting, int number, const sitting::LoggedEvent& event) override {
    insert_.with(plan_, sitting, number, event.text, event.head_hex).run();
  }

 private:
  std::shared_ptr<Database> database_;
  std::int64_t plan_;
  Statement insert_;
};

}  // namespace

void Campaign::add_plan(const SealedPlan& plan) {
  if (plan.name.empty()) throw text::BadInput("a plan needs a name");
  if (seal::commitment(plan.text, plan.seed) != plan.commitment)
    throw std::invalid_argument("the commitment of plan " + text::quoted(plan.name) +
                                " is not that of its text and seed");
  Transaction transaction(*database_);
  Statement taken(*database_, "SELECT 1 FROM plan WHERE name = ?1");
  if (taken.with(plan.name).next())
    throw text::BadInput("there is a plan " + text::quoted(plan.name) +
                         " already; a sealed plan is never replaced\n"
                         "choose another name");
  Statement(*database_, "INSERT INTO plan SELECT 1 + coalesce(max(number), 0), ?1, ?2, ?3, ?4 FROM plan")
      .with(plan.name, plan.text, Blob{seal::bytes_of(plan.seed)}, Blob{seal::bytes_of(plan.commitment)})
      .run();
  transaction.keep();
}

std::vector<SealedPlan> Campaign::plans() const {
  std::vector<SealedPlan> plans;
  Statement rows(*database_, "SELECT name, text, seed, commitment FROM plan ORDER BY number");
  while (rows.next()) plans.push_back(plan_of(rows));
  return plans;
}

SealedPlan Campaign::plan(const std::string& name) const {
  Statement row(*database_, "SELECT name, text, seed, commitment FROM plan WHERE name = ?1");
  if (!row.with(name).next()) refuse_unknown(*database_, name);
  return plan_of(row);
}

std::unique_ptr<sitting::EventLog> Campaign::log(const std::string& plan_name) const {
  Statement row(*database_, "SELECT number FROM plan WHERE name = ?1");
  if (!row.with(plan_name).next()) refuse_unknown(*database_, plan_name);
  return std::make_unique<FileLog>(database_, row.integer(0));
}

seal::Digest Campaign::link_key() {
  Transaction transaction(*database_);
  Statement(*database_, "INSERT INTO link_key SELECT 1, ?1 WHERE NOT EXISTS (SELECT 1 FROM link_key)")
      .with(Blob{seal::bytes_of(seal::random_digest())})
      .run();
  transaction.keep();
  Statement row(*database_, "SELECT key FROM link_key");
  row.next();
  return digest_of(row.bytes(0));
}

}  // namespace store
