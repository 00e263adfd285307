#include "store/campaign.h"

#include <gtest/gtest.h>

#include "store/sample.h"

namespace {

using store::Cable;
using store::Campaign;
using store::Rig;
using store_test::Folder;

const Cable bell_wire{"bell wire", {{"geometry", "parallel"}, {"cross-section", "0,5 mm2"}}, "Rest, 3 m"};
const Cable heavy_pair{"heavy-pair", {}, ""};

TEST(Campaign, KeepsItsTitle) {
  const Folder folder;
  { const Campaign made = Campaign::create(folder / "a.campaign", "Kabel für \"daheim\""); }
  EXPECT_EQ(Campaign::open(folder / "a.campaign").title(), "Kabel für \"daheim\"");
}

TEST(Campaign, KeepsCablesInTheirOrderAsTyped) {
  const Folder folder;
  {
    Campaign campaign = Campaign::create(folder / "a.campaign", "t");
    campaign.add_cable(heavy_pair);
    campaign.add_cable(bell_wire);
  }
  EXPECT_EQ(Campaign::open(folder / "a.campaign").cables(), (std::vector<Cable>{heavy_pair, bell_wire}));
}

TEST(Campaign, KeepsRigsInTheirOrderAsTyped) {
  const Folder folder;
  const Rig living_room{"living room", "loudspeaker",        "0.05",  "1e-6", "", "8",
                        "0.5",         "72 dBA at the seat", "speech"};
  const Rig desk{"desk", "line level", "100", "", "47kohm||100pF", "", "", "", ""};
  {
    Campaign campaign = Campaign::create(folder / "a.campaign", "t");
    campaign.add_rig(living_room);
    campaign.add_rig(desk);
  }
  EXPECT_EQ(Campaign::open(folder / "a.campaign").rigs(), (std::vector<Rig>{living_room, desk}));
}

TEST(Campaign, TheLastBaselineNamedCounts) {
  const Folder folder;
  {
    Campaign campaign = Campaign::create(folder / "a.campaign", "t");
    EXPECT_EQ(campaign.baseline(), "");
    campaign.add_cable(heavy_pair);
    campaign.add_cable(bell_wire);
    campaign.set_baseline("bell wire");
    campaign.set_baseline("heavy-pair");
  }
  EXPECT_EQ(Campaign::open(folder / "a.campaign").baseline(), "heavy-pair");
}

TEST(Campaign, RefusesNamesTakenEmptyOrNotToBeShown) {
  const Folder folder;
  Campaign campaign = Campaign::create(folder / "a.campaign", "t");
  campaign.add_cable(bell_wire);
  campaign.add_rig({.name = "desk", .kind = "line level"});
  EXPECT_REFUSAL(campaign.add_cable(bell_wire), text::BadInput,
                 "there is a cable \"bell wire\" already\nchoose another name");
  EXPECT_REFUSAL(campaign.add_rig({.name = "desk", .kind = "loudspeaker"}), text::BadInput,
                 "there is a rig \"desk\" already\nchoose another name");
  EXPECT_REFUSAL(campaign.add_cable({}), text::BadInput, "a cable needs a name");
  EXPECT_REFUSAL(campaign.add_cable({.name = "a\nb"}), text::BadInput,
                 "the name of a cable has characters that cannot be shown: \"a?b\"");
  EXPECT_REFUSAL(campaign.add_cable({.name = "c", .construction = {{"geometry", "\xff"}}}), text::BadInput,
                 "a text to be kept in the campaign is not UTF-8");
  EXPECT_EQ(campaign.cables().size(), 1u);
  EXPECT_EQ(campaign.rigs().size(), 1u);
}

TEST(Campaign, RefusesAnUnknownBaselineAndKindOfRig) {
  const Folder folder;
  Campaign campaign = Campaign::create(folder / "a.campaign", "t");
  campaign.add_cable(bell_wire);
  EXPECT_REFUSAL(campaign.set_baseline("bell wir"), text::BadInput,
                 "there is no cable \"bell wir\"; did you mean \"bell wire\"?");
  EXPECT_REFUSAL(campaign.add_rig({.name = "desk", .kind = "headphones"}), text::BadInput,
                 "the kind of rig \"desk\" is \"headphones\"\nwrite loudspeaker or line level");
  EXPECT_EQ(campaign.baseline(), "");
}

TEST(Campaign, DoesAWorkAsAWholeOrNotAtAll) {
  const Folder folder;
  Campaign campaign = Campaign::create(folder / "a.campaign", "t");
  EXPECT_REFUSAL(campaign.all_or_none([&] {
    campaign.add_cable(heavy_pair);
    campaign.set_baseline("heavy-pair");
    campaign.add_cable(heavy_pair);
  }),
                 text::BadInput, "there is a cable \"heavy-pair\" already\nchoose another name");
  EXPECT_TRUE(campaign.cables().empty());
  EXPECT_EQ(campaign.baseline(), "");

  campaign.all_or_none([&] {
    campaign.add_cable(heavy_pair);
    EXPECT_THROW(campaign.add_cable(heavy_pair), text::BadInput);
    campaign.add_cable(bell_wire);
  });
  EXPECT_EQ(campaign.cables(), (std::vector<Cable>{heavy_pair, bell_wire}));
}

TEST(Campaign, CanBeMoved) {
  const Folder folder;
  Campaign first = Campaign::create(folder / "a.campaign", "first");
  Campaign second = Campaign::create(folder / "b.campaign", "second");
  second = std::move(first);
  EXPECT_EQ(second.title(), "first");
  EXPECT_EQ(Campaign::open(folder / "b.campaign").title(), "second");
}

// The links of a hosted sitting stay the same for ever, and say nothing of a seed: they are drawn.
TEST(Campaign, KeepsTheKeyOfItsLinks) {
  const Folder folder;
  seal::Digest first{}, other{};
  {
    Campaign campaign = Campaign::create(folder / "a.campaign", "t");
    first = campaign.link_key();
    EXPECT_EQ(campaign.link_key(), first);
    other = Campaign::create(folder / "b.campaign", "t").link_key();
  }
  EXPECT_EQ(Campaign::open(folder / "a.campaign").link_key(), first);
  EXPECT_NE(first, other);
}

}  // namespace
