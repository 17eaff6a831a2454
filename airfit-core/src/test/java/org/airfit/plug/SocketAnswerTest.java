package org.airfit.plug;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import java.util.List;
import java.util.Set;
import org.airfit.measure.Instrument;
import org.airfit.source.Source;
import org.junit.jupiter.api.Test;

class SocketAnswerTest {

  private static final Source TRIED = Source.demo("tried, says this test");
  private static final UniversalSocket WIDE =
      new UniversalSocket("wide", Set.of("demo-curlew", "demo-plover"), TRIED);
  private static final ReferenceSet BIRDS = DemoProfiles.birds().withSockets(List.of(WIDE));

  @Test
  void the_socket_that_takes_every_profile_in_use_is_named_with_who_says_so() {
    SocketAnswer answer = SocketAnswer.alone(BIRDS, Set.of("demo-plover", "demo-curlew"));
    assertThat(answer.universalSockets()).containsExactly(WIDE);
    assertThat(answer.waysOut()).hasSize(4);
    assertThat(answer.waysOut().get(3).what())
        .contains("Demo Curlew, Demo Plover", "wide", "tried, says this test");
    assertThat(answer.working().toText()).contains("wide");
    assertThat(answer.verdict()).isEqualTo(PlugVerdict.INSUFFICIENT_DATA);
  }

  @Test
  void a_socket_that_takes_only_some_of_them_is_not_offered() {
    SocketAnswer answer = SocketAnswer.alone(BIRDS, Set.of("demo-plover", "demo-heron"));
    assertThat(answer.universalSockets()).isEmpty();
    assertThat(answer.waysOut().get(3).what())
        .contains("knows no socket", "Demo Heron, Demo Plover")
        .doesNotContain("wide");
    assertThat(SocketAnswer.alone().universalSockets()).isEmpty();
  }

  @Test
  void profiles_in_use_must_be_known() {
    assertThatIllegalArgumentException()
        .isThrownBy(() -> SocketAnswer.alone(BIRDS, Set.of()))
        .withMessageContaining("at least one");
    Set<String> strange = Set.of("demo-owl");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> SocketAnswer.alone(BIRDS, strange))
        .withMessageContainingAll("must be one of demo-heron", "demo-owl");
  }

  @Test
  void sockets_of_a_set_are_checked_and_kept_when_sets_are_joined() {
    ReferenceSet birds = DemoProfiles.birds();
    List<UniversalSocket> twice = List.of(WIDE, WIDE);
    assertThatIllegalArgumentException()
        .isThrownBy(() -> birds.withSockets(twice))
        .withMessageContaining("stands twice");
    List<UniversalSocket> strange =
        List.of(new UniversalSocket("odd", Set.of("demo-owl", "demo-heron"), TRIED));
    assertThatIllegalArgumentException()
        .isThrownBy(() -> birds.withSockets(strange))
        .withMessageContainingAll("socket \"odd\"", "demo-owl");
    Set<String> one = Set.of("demo-heron");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> new UniversalSocket("x", one, TRIED))
        .withMessageContaining("at least 2");
    Set<String> two = WIDE.profileIds();
    assertThatIllegalArgumentException()
        .isThrownBy(() -> new UniversalSocket(" ", two, TRIED))
        .withMessageContaining("must not be blank");
    PlugProfile more = PlugProfile.builder("more")
        .from(Provenance.synthetic(), TRIED)
        .dimension(
            Dimension.TIP_DIAMETER,
            birds.profiles().get(0).spread(Dimension.TIP_DIAMETER).orElseThrow())
        .confirmUnusual()
        .build();
    ReferenceSet joint = SetComparison.of(
            ReferenceSet.of("more", List.of(more)), BIRDS, Instrument.DIGITAL_CALIPER)
        .merged("joint");
    assertThat(joint.sockets()).containsExactly(WIDE);
  }
}
