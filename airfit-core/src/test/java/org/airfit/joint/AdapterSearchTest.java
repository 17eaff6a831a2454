package org.airfit.joint;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.airfit.quantity.NominalThreadSize;
import org.airfit.source.Basis;
import org.airfit.thread.Gender;
import org.airfit.thread.ThreadFamily;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What goes between two ends, searched with the catalogue of standard shapes. */
class AdapterSearchTest {

  private static List<String> between(String one, String other) {
    return Mating.of(End.parse(one), End.parse(other)).between().stream()
        .map(StandardAdapter::name)
        .toList();
  }

  @ParameterizedTest(name = "{0} and {1}")
  @CsvSource({
    "1/2 NPT male, 1/4 NPT female, female × male reducer 1/2 NPT female × 1/4 NPT male",
    "1/4 NPT male, 1/2 NPT female, reducing bushing 1/2 NPT male × 1/4 NPT female",
    "1/4 NPT male, 1/4 NPT male, female coupling 1/4 NPT female × 1/4 NPT female",
    "1/2 NPTF male, 1/2 NPTF male, female coupling 1/2 NPTF female × 1/2 NPTF female",
    "1/2 NPSM male, 1/2 NPSM male, female coupling 1/2 NPSM female × 1/2 NPSM female",
    "R 3/4 male, R 3/4 male, female coupling Rc 3/4 female × Rc 3/4 female",
    "G 1 male, G 1 male, female coupling G 1 female × G 1 female",
    "1/2 NPT male, 3/8 NPT male, reducing female coupling 1/2 NPT female × 3/8 NPT female",
    "G 1/8 male, G 3/8 male, reducing female coupling G 3/8 female × G 1/8 female",
    "1/4 NPT female, 1/4 NPT female, nipple 1/4 NPT male × 1/4 NPT male",
    "Rc 1/2 female, Rp 1/2 female, nipple R 1/2 male × R 1/2 male",
    "G 1/4 female, G 1/2 female, reducing nipple G 1/2 male × G 1/4 male",
    "1/2 NPT male, G 1/2 female, adapter 1/2 NPT female × G 1/2 male",
    "1/4 NPT male, R 1/4 male, female adapter coupling 1/4 NPT female × Rc 1/4 female",
    "1/4 NPT female, G 1/4 female, adapter nipple 1/4 NPT male × G 1/4 male",
    "1/4 NPT male, G 3/8 female, adapter 1/4 NPT female × G 3/8 male",
    "R 1/4 male, G 1/4 female, adapter Rc 1/4 female × G 1/4 male",
    "G 1/4 male, Rp 1/4 female, adapter R 1/4 male × G 1/4 female",
    "1/4 NPSM male, 1/4 NPT female, swivel adapter 1/4 NPSM female × 1/4 NPT male",
    "3/8 in hose, 1/4 NPT female, hose tail 3/8 in barb × 1/4 NPT male",
    "10 mm hose, G 1/4 female, hose tail 10 mm barb × G 1/4 male",
    "9.5 mm hose, 1/4 NPT male, hose tail 3/8 in barb × 1/4 NPT female",
    "3/8 in hose, 1/2 in hose, reducing hose joiner 1/2 in barb × 3/8 in barb",
    "3/8 in hose, 3/8 in hose, hose joiner 3/8 in barb × 3/8 in barb",
    "3/8 in barb, 3/8 in barb, length of 3/8 in hose",
    "8 mm tube, G 1/4 female, push-in connector 8 mm push-in × G 1/4 male",
    "8 mm tube, 8 mm tube, push-in union 8 mm push-in × 8 mm push-in",
    "1/4 in tube, 6 mm tube, reducing push-in union 1/4 in push-in × 6 mm push-in",
    "8 mm push-in, 8 mm push-in, length of 8 mm tube"
  })
  void one_piece_is_named_by_its_shape_and_both_of_its_ends(
      String one, String other, String adapter) {
    assertThat(between(one, other)).containsExactly(adapter);
    assertThat(between(other, one)).containsExactly(adapter);
    String reason = Mating.of(End.parse(one), End.parse(other)).reason();
    assertThat(reason).endsWith(adapter + ".").contains("Between them goes a");
  }

  @Test
  void what_one_piece_does_not_do_takes_two_or_three_in_their_order() {
    assertThat(between("3/8 in barb", "1/4 NPT female"))
        .containsExactly("length of 3/8 in hose", "hose tail 3/8 in barb × 1/4 NPT male");
    assertThat(between("1/4 NPT female", "3/8 in barb"))
        .containsExactly("hose tail 3/8 in barb × 1/4 NPT male", "length of 3/8 in hose");
    assertThat(between("1/4 NPSM male", "G 1/4 male"))
        .containsExactly(
            "swivel adapter 1/4 NPSM female × 1/4 NPT male",
            "female adapter coupling 1/4 NPT female × G 1/4 female");
    assertThat(between("4 NPT male", "1/8 NPT male")).hasSize(3);
    assertThat(Mating.of(End.parse("3/8 in barb"), End.parse("1/4 NPT female")).reason())
        .endsWith(
            "Between them go, one after the other, a length of 3/8 in hose, then a hose tail 3/8 in barb × "
                + "1/4 NPT male.");
  }

  /** One lies inside the other, which a nipple in a coupling does not. */
  @Test
  void an_adapter_and_a_bushing_come_before_a_coupling_and_a_nipple() {
    assertThat(between("R 1/4 male", "1/2 NPT female"))
        .containsExactly(
            "adapter 1/4 NPT male × Rc 1/4 female",
            "reducing bushing 1/2 NPT male × 1/4 NPT female");
  }

  @Test
  void a_short_dryseal_thread_meets_another_through_full_ones_and_not_through_a_second_standard() {
    assertThat(between("1/4 PTF-SAE SHORT male", "1/4 PTF-SAE SHORT female"))
        .containsExactly(
            "female coupling 1/4 NPTF female × 1/4 NPTF female",
            "nipple 1/4 NPTF male × 1/4 NPTF male");
    assertThat(between("1/4 PTF-SAE SHORT male", "1/4 NPT female"))
        .containsExactly(
            "female coupling 1/4 NPTF female × 1/4 NPTF female",
            "nipple 1/4 NPT male × 1/4 NPT male");
  }

  @Test
  void what_goes_together_needs_nothing_between() {
    assertThat(between("1/4 NPT male", "1/4 NPT female")).isEmpty();
    assertThat(Mating.of(End.parse("1/4 NPT male"), End.parse("1/4 NPT female")).reason())
        .doesNotContain("between");
  }

  @ParameterizedTest
  @CsvSource({
    "11 mm hose, 1/4 NPT female, no standard adapter has an end for 11 mm hose",
    "1/4 NPT female, 18 mm tube, no standard adapter has an end for 18 mm tube",
    "11 mm barb, 18 mm tube, no standard adapter has an end for 11 mm barb or 18 mm tube",
    "4 NPT male, 1/16 NPT female, more than 3 adapters on one another would be needed"
  })
  void where_nothing_standard_goes_between_it_says_why(String one, String other, String why) {
    Mating mating = Mating.of(End.parse(one), End.parse(other));
    assertThat(mating.between()).isEmpty();
    assertThat(mating.reason()).contains("Nothing standard goes between: " + why);
    Chain<StandardAdapter> chain = Chain.between(mating.one(), mating.other());
    assertThat(chain.verdict()).isEqualTo(ChainVerdict.NOT_JOINED);
    assertThat(chain.inWords()).contains("Nothing standard goes between");
  }

  @Test
  void a_chain_of_standard_adapters_does_not_claim_a_bore() {
    Chain<StandardAdapter> chain =
        Chain.between(End.parse("1/2 NPT male"), End.parse("1/4 NPT female"));
    assertThat(chain.verdict()).isEqualTo(ChainVerdict.THROUGH_ADAPTERS);
    assertThat(chain.smallestBore()).isEmpty();
    assertThat(chain.inWords())
        .isEqualTo(
            "1/2 NPT male to 1/4 NPT female: through female × male reducer 1/2 NPT female × 1/4 NPT male");
    assertThat(chain.working().toText())
        .contains("their bores are not known")
        .contains("female × male reducer")
        .doesNotContain("narrowest");
    assertThat(Chain.between(End.parse("1/4 NPT male"), End.parse("1/4 NPT female"))
            .verdict())
        .isEqualTo(ChainVerdict.DIRECT);
  }

  @Test
  void the_catalogue_holds_each_adapter_once_and_no_thread_that_a_standard_lacks() {
    List<StandardAdapter> all = StandardAdapter.all();
    assertThat(all).doesNotHaveDuplicates().hasSizeGreaterThan(2000);
    assertThat(all).extracting(StandardAdapter::name).doesNotHaveDuplicates();
    for (StandardAdapter adapter : all) {
      // it is an end that can be typed, and what it prints is read back
      assertThat(End.parse(adapter.one().label())).isEqualTo(adapter.one());
      assertThat(End.parse(adapter.other().label())).isEqualTo(adapter.other());
      assertThat(adapter.smallestBore()).isEmpty();
      // else it would do nothing; a swivel adds the seat that a taper thread has not
      if (adapter.shape() != AdapterShape.SWIVEL_ADAPTER) {
        assertThat(Mating.isSound(adapter.one(), adapter.other()))
            .as(adapter.name())
            .isFalse();
      }
    }
    assertThat(StandardAdapter.SOURCE.basis()).isEqualTo(Basis.FROM_MEMORY);
    StandardAdapter first = all.get(0);
    assertThat(first).hasToString(first.name()).isEqualTo(first).isNotEqualTo(all.get(1));
    assertThat(first).hasSameHashCodeAs(all.get(0));
  }

  @Test
  void the_shape_says_which_ends_are_male_and_how_many_families_there_are() {
    for (StandardAdapter adapter : StandardAdapter.all()) {
      if (adapter.one() instanceof End.Threaded a && adapter.other() instanceof End.Threaded b) {
        String genders = a.gender().label() + " " + b.gender().label();
        boolean oneFamily = a.family() == b.family();
        boolean oneSize = a.size() == b.size();
        switch (adapter.shape()) {
          case NIPPLE -> assertThat(genders + oneFamily + oneSize).isEqualTo("male maletruetrue");
          case REDUCING_NIPPLE ->
            assertThat(genders + oneFamily + oneSize).isEqualTo("male maletruefalse");
          case FEMALE_COUPLING ->
            assertThat(genders + oneFamily + oneSize).isEqualTo("female femaletruetrue");
          case REDUCING_COUPLING ->
            assertThat(genders + oneFamily + oneSize).isEqualTo("female femaletruefalse");
          case BUSHING -> {
            assertThat(genders + oneFamily).isEqualTo("male femaletrue");
            assertThat(a.size()).isGreaterThan(b.size());
          }
          case REDUCER -> {
            assertThat(genders + oneFamily).isEqualTo("female maletrue");
            assertThat(a.size()).isGreaterThan(b.size());
          }
          case ADAPTER_NIPPLE -> assertThat(genders + oneFamily).isEqualTo("male malefalse");
          case ADAPTER_COUPLING -> assertThat(genders + oneFamily).isEqualTo("female femalefalse");
          case ADAPTER -> {
            assertThat(a.gender()).isNotEqualTo(b.gender());
            assertThat(oneFamily).isFalse();
          }
          case SWIVEL_ADAPTER -> {
            assertThat(a.family() + genders).startsWith("NPSMfemale");
            assertThat(b.family()).isEqualTo(ThreadFamily.NPT);
          }
          default -> throw new AssertionError(adapter);
        }
      }
    }
  }

  /** The pairs of every seventh end; those of all ends in {@link AdapterSearchReachTest}. */
  @Test
  void pairs_of_ends_get_the_fewest_pieces_and_every_joint_of_them_mates() {
    new AdapterPairs().check(7);
  }

  @Test
  void every_thread_of_every_family_is_served() {
    for (End end : AdapterPairs.everyEnd()) {
      if (end instanceof End.Threaded) {
        assertThat(AdapterSearch.isServed(end)).as(end.label()).isTrue();
      }
    }
  }

  @Test
  void two_males_of_one_family_get_a_female_coupling_of_that_family_in_every_size() {
    for (ThreadFamily family : ThreadFamily.values()) {
      if (family.has(Gender.MALE) && family != ThreadFamily.PTF_SAE_SHORT) {
        for (NominalThreadSize size : family.sizes()) {
          End male = new End.Threaded(family, size, Gender.MALE);
          StandardAdapter coupling = Mating.of(male, male).between().get(0);
          assertThat(coupling.shape()).isEqualTo(AdapterShape.FEMALE_COUPLING);
          assertThat(coupling.one())
              .isEqualTo(new End.Threaded(family, size, Gender.FEMALE))
              .isEqualTo(coupling.other());
        }
      }
    }
  }

  @Test
  void across_the_two_standards_a_single_adapter_names_both_families() {
    for (ThreadFamily american : List.of(ThreadFamily.NPT, ThreadFamily.NPTF)) {
      for (ThreadFamily british : List.of(ThreadFamily.BSPT, ThreadFamily.BSPP)) {
        for (NominalThreadSize size : american.sizes()) {
          if (british.sizes().contains(size)) {
            for (Gender one : Gender.values()) {
              for (Gender other : Gender.values()) {
                End a = new End.Threaded(american, size, one);
                End b = new End.Threaded(british, size, other);
                List<StandardAdapter> between = Mating.of(a, b).between();
                assertThat(between).hasSize(1);
                assertThat(between.get(0).name())
                    .contains(american.symbol() + " ")
                    .contains(
                        british.symbol(other == Gender.MALE ? Gender.FEMALE : Gender.MALE) + " ");
              }
            }
          }
        }
      }
    }
  }
}
