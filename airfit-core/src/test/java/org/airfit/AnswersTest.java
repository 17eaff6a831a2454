package org.airfit;

import static org.assertj.core.api.Assertions.assertThat;

import java.lang.reflect.Modifier;
import org.airfit.joint.Mating;
import org.airfit.line.LineLoss;
import org.airfit.line.LineSolution;
import org.airfit.network.NetworkResult;
import org.airfit.plug.Identification;
import org.airfit.plug.ProfileCandidate;
import org.airfit.plug.ReadingSlip;
import org.airfit.plug.Residual;
import org.airfit.run.FrictionJump;
import org.airfit.run.LargestFlow;
import org.airfit.run.RunResult;
import org.airfit.run.SupplyNeeded;
import org.airfit.select.BillOfMaterials;
import org.airfit.select.Offer;
import org.airfit.select.Offers;
import org.airfit.select.Proposal;
import org.airfit.select.Selection;
import org.airfit.thread.ForeignThread;
import org.airfit.thread.SlipCandidate;
import org.airfit.thread.ThreadCandidate;
import org.airfit.thread.ThreadIdentification;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Answers that say what was computed: nobody but the library makes one. */
class AnswersTest {

  @ParameterizedTest
  @ValueSource(
      classes = {
        FrictionJump.class,
        Identification.class,
        LargestFlow.class,
        LineLoss.Flowing.class,
        LineSolution.class,
        Mating.class,
        NetworkResult.Solved.class,
        ProfileCandidate.class,
        Proposal.class,
        BillOfMaterials.class,
        Offer.class,
        Offers.class,
        ReadingSlip.class,
        Residual.class,
        RunResult.Delivered.class,
        RunResult.Starved.class,
        Selection.NothingFits.class,
        Selection.Proposals.class,
        SupplyNeeded.class,
        ForeignThread.class,
        SlipCandidate.class,
        ThreadCandidate.class,
        ThreadIdentification.class
      })
  void an_answer_has_no_public_constructor_and_no_subtype(Class<?> answer) {
    assertThat(answer.getConstructors()).isEmpty();
    assertThat(answer).isFinal();
    assertThat(answer.getDeclaredConstructors())
        .noneMatch(constructor -> Modifier.isProtected(constructor.getModifiers()));
  }
}
