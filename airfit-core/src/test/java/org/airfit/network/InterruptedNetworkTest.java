package org.airfit.network;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;

import java.util.concurrent.CancellationException;
import org.airfit.air.AirState;
import org.airfit.line.Conduit;
import org.airfit.plant.Supply;
import org.airfit.quantity.AbsolutePressure;
import org.airfit.quantity.Length;
import org.airfit.quantity.Temperature;
import org.airfit.run.ToolDemand;
import org.assertj.core.api.ThrowableAssert.ThrowingCallable;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;

/** Who does not wait for a network any more stops it by interrupting its thread. */
class InterruptedNetworkTest {

  private static final Network NETWORK = Network.at(AbsolutePressure.ofBar(1.0))
      .supply(
          "room",
          Supply.fixed(AirState.of(AbsolutePressure.ofBar(8.0), Temperature.ofCelsius(20.0))))
      .line(
          "main",
          "room",
          "bench",
          Conduit.of(
              Length.ofMillimetres(20.0), Length.ofMetres(30.0), Length.ofMillimetres(0.045)))
      .tool("bench", ToolDemand.fixed("grinder", DrawnNetworks.air(0.012)))
      .build();

  @AfterEach
  void noMoreInterrupted() {
    Thread.interrupted();
  }

  private static void assertEndsInterrupted(ThrowingCallable solving) {
    Thread.currentThread().interrupt();
    assertThatExceptionOfType(CancellationException.class)
        .isThrownBy(solving)
        .withMessage(
            "the computing of the network ended without an answer: its thread was interrupted; ask"
                + " again where that was not meant");
    assertThat(Thread.interrupted()).as("the thread stays interrupted").isTrue();
  }

  @Test
  void a_network_ends_when_its_thread_is_interrupted() {
    assertEndsInterrupted(NETWORK::solve);
    assertEndsInterrupted(NETWORK::solveMean);
    assertEndsInterrupted(() -> NETWORK.simulate(1L, 10));
    assertThat(NETWORK.solve()).isInstanceOf(NetworkResult.Solved.class);
  }
}
