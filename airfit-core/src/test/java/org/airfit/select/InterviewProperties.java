package org.airfit.select;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Random;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import org.airfit.working.UnitSystem;

/** What an interview promises, on small catalogues and jobs at random. */
class InterviewProperties {

  private static Interview begun(long seed) {
    Jumble jumble = new Jumble(seed);
    List<Part> parts = jumble.parts();
    return Interview.of(jumble.job().build(), Catalogue.of(parts)).with(Topic.MEDIUM, "compressed air");
  }

  @Property(tries = 12)
  void it_prints(@ForAll long seed) {
    Interview talk = begun(seed);
    long start = System.nanoTime();
    int n = 0;
    Random random = new Random(seed);
    StringBuilder out = new StringBuilder();
    while (talk.next().isPresent()) {
      Question question = talk.next(UnitSystem.US).orElseThrow();
      n++;
      out.append(question + " " + question.answers() + "\n");
      int which = random.nextInt(question.answers().size() + 1);
      talk = which == question.answers().size()
          ? talk.withUnknown(question.topic())
          : talk.with(question.topic(), question.answers().get(which).text());
    }
    if (Math.abs(seed) % 5 == 0) {
    System.out.println(out + " " + n + " in " + (System.nanoTime() - start) / 1e6);}
  }
}
