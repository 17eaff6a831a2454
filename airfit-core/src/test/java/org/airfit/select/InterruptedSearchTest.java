package org.airfit.select;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CancellationException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.FutureTask;
import java.util.concurrent.TimeUnit;
import org.airfit.joint.End;
import org.airfit.quantity.FreeAirFlow;
import org.airfit.quantity.GaugePressure;
import org.airfit.quantity.Length;
import org.airfit.quantity.Money;
import org.assertj.core.api.ThrowableAssert.ThrowingCallable;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;

/** Who does not wait for an answer any more stops the search by interrupting its thread. */
class InterruptedSearchTest {

  private static final Catalogue CATALOGUE = Catalogue.of(Shelf.parts());

  @AfterEach
  void noMoreInterrupted() {
    Thread.interrupted();
  }

  private static void assertEndsInterrupted(ThrowingCallable search) {
    Thread.currentThread().interrupt();
    assertThatExceptionOfType(CancellationException.class)
        .isThrownBy(search)
        .withMessage(
            "the search for parts ended without an answer: its thread was interrupted; ask again where that"
                + " was not meant");
    assertThat(Thread.interrupted()).as("the thread stays interrupted").isTrue();
  }

  @Test
  void every_search_for_parts_ends_when_its_thread_is_interrupted() {
    Requirement job = Shelf.job().build();
    assertEndsInterrupted(() -> Selection.of(job, CATALOGUE));
    assertEndsInterrupted(() -> Offers.of(job, CATALOGUE));
    assertEndsInterrupted(() -> Interview.of(job, CATALOGUE).questions());
    assertEndsInterrupted(() -> Interview.of(job, CATALOGUE).next());
    assertEndsInterrupted(() -> Interview.of(job, CATALOGUE).selection());
    assertEndsInterrupted(() -> Interview.of(job, CATALOGUE).brokenWhateverIsAnswered());
    assertThat(Selection.of(job, CATALOGUE)).isInstanceOf(Selection.Proposals.class);
  }

  /** A search of minutes, over parts of which none is as good as another. */
  @Test
  void a_search_that_takes_minutes_ends_soon_after_its_thread_is_interrupted() throws Exception {
    End female = End.parse("3/8 NPT female");
    List<Part> parts = new ArrayList<>();
    for (int i = 0; i < 400; i++) {
      PartFacts facts = Shelf.steel("hose " + i).withPrice(Money.parse((10 + i * i % 97) + " EUR"));
      Part.Hose hose = Shelf.hose(facts, 8.0 + 0.01 * i, 10.0 + 0.01 * i);
      parts.add(new Part.Hose(
          facts, hose.bore(), hose.conduitRange(), female, End.parse("3/8 NPT male")));
    }
    Length reach = Length.ofMetres(9.0);
    Requirement job = Shelf.cheapest(
            Requirement.forTool(FreeAirFlow.ofAnrLitresPerSecond(10.0), GaugePressure.ofBar(6.0))
                .toolInlet(female))
        .layout(Layout.of(
            List.of(Slot.hose("one", reach), Slot.hose("two", reach), Slot.hose("three", reach))))
        .build();
    FutureTask<List<Proposal>> search =
        new FutureTask<>(() -> new PartSearch(job, Catalogue.of(parts), 1280).nearest());
    ExecutorService threads = Executors.newSingleThreadExecutor();
    try {
      threads.execute(search);
      Thread.sleep(700);
      assertThat(search.isDone()).as("it takes longer than that").isFalse();
      search.cancel(true);
      threads.shutdown();
      assertThat(threads.awaitTermination(5, TimeUnit.SECONDS)).isTrue();
    } finally {
      threads.shutdownNow();
    }
  }
}
