package org.airfit.select;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import org.airfit.joint.End;
import org.airfit.joint.Mating;
import org.airfit.quantity.Money;
import org.airfit.quantity.NominalThreadSize;
import org.airfit.thread.Gender;
import org.airfit.thread.ThreadFamily;

/** Bills of many proposals at random, counted once more from the ends that meet. */
class BillProperties {

  private static final Accessory TAPE = new Accessory.ThreadSealant(
      PartFacts.of("tape", "tape").withPrice(Money.parse("1.25 EUR")), NominalThreadSize.FOUR);

  /** Every end in the order the air goes, told apart by the part it belongs to. */
  private static List<End[]> pairs(Proposal p) {
    List<End[]> pairs = new ArrayList<>();
    for (Joint joint : p.joints()) {
      if (joint.isSound()) {
        joint.matings().forEach(mating -> pairs.add(new End[] {mating.one(), mating.other()}));
      }
    }
    return pairs;
  }

  private static long threads(Proposal p, ThreadFamily male) {
    return pairs(p).stream()
        .filter(pair -> isMale(pair[0], male) || isMale(pair[1], male))
        .count();
  }

  private static boolean isMale(End end, ThreadFamily family) {
    return end instanceof End.Threaded threaded
        && threaded.gender() == Gender.MALE
        && threaded.family() == family;
  }

  private static List<Proposal> some(long seed) {
    Jumble jumble = new Jumble(seed);
    Catalogue catalogue = Catalogue.of(jumble.parts());
    List<Proposal> all = Selection.of(jumble.job().build(), catalogue)
        .fold(Selection.Proposals::proposals, Selection.NothingFits::closest);
    return all.subList(0, Math.min(3, all.size()));
  }

  private static int quantity(BillOfMaterials bill, BillLine.Kind kind) {
    return bill.lines(kind).stream().mapToInt(BillLine::quantity).sum();
  }

  /** The jumble has only NPT male in NPT or NPSC female, and G in G: the first take sealant, the others a washer. */
  @Property(tries = 40)
  void every_taper_thread_is_sealed_and_every_parallel_one_has_its_washer(@ForAll long seed) {
    for (Proposal p : some(seed)) {
      boolean sound = p.joints().stream().allMatch(Joint::isSound);
      BillOfMaterials bill = BillOfMaterials.of(p, Catalogue.of(List.of(), List.of(TAPE)));
      long taper = threads(p, ThreadFamily.NPT);
      if (sound) {
        assertThat(bill.lines(BillLine.Kind.SEALANT)).hasSize(taper > 0 ? 1 : 0);
        bill.lines(BillLine.Kind.SEALANT).forEach(line -> {
          assertThat(line.reason())
              .startsWith(
                  taper == 1 ? "seals the taper thread: " : "seals " + taper + " taper threads: ")
              .contains("first thread bare");
          assertThat(line.quantity()).isEqualTo(1);
        });
        assertThat(quantity(bill, BillLine.Kind.SEAL))
            .isEqualTo((int) threads(p, ThreadFamily.BSPP));
        assertThat(bill.lines(BillLine.Kind.ADAPTER)).allMatch(line -> line.id().isPresent());
      } else {
        assertThat(bill.lines(BillLine.Kind.ADAPTER).stream()
                    .anyMatch(each -> each.id().isEmpty())
                || !bill.questions().isEmpty())
            .as("what is not joined is a line or a question")
            .isTrue();
      }
    }
  }

  @Property(tries = 40)
  void no_line_lacks_its_reason_and_the_total_is_the_sum_by_hand(@ForAll long seed) {
    for (Proposal p : some(seed)) {
      BillOfMaterials bill = BillOfMaterials.of(p, Catalogue.of(List.of(), List.of(TAPE)));
      BigDecimal sum = BigDecimal.ZERO;
      for (BillLine line : bill.lines()) {
        assertThat(line.reason()).isNotBlank();
        assertThat(line.source().isPresent())
            .as("a line that is no part of the proposal says what asks for it")
            .isEqualTo(
                p.parts().stream().noneMatch(part -> line.id().equals(Optional.of(part.id()))));
        if (line.facts().isPresent() && !line.facts().get().isExisting()) {
          sum = sum.add(line.facts()
              .get()
              .price()
              .map(Money::amount)
              .orElse(BigDecimal.ZERO)
              .multiply(new BigDecimal(line.quantity())));
        }
      }
      assertThat(bill.total().map(Money::amount).orElse(BigDecimal.ZERO)).isEqualByComparingTo(sum);
      assertThat(bill.lines().stream()
              .filter(line -> line.source().isEmpty())
              .mapToInt(BillLine::quantity)
              .sum())
          .as("every part of the proposal once")
          .isEqualTo(p.parts().size());
      assertThat(bill.unpriced())
          .allMatch(line -> !line.existing() && line.price().isEmpty());
    }
  }

  /** Each missing adapter meets its neighbours soundly: the chain of ends closes. */
  @Property(tries = 40)
  void standard_adapters_named_for_a_miss_close_its_joints(@ForAll long seed) {
    for (Proposal p : some(seed)) {
      for (Meeting meeting : Meeting.of(p.assembly())) {
        Mating mating = meeting.mating();
        assertThat(mating.verdict().isSound()).as(mating.inWords()).isTrue();
      }
    }
  }
}
