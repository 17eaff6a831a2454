package org.airfit.kotlin

import org.airfit.air.AirState
import org.airfit.line.Conduit
import org.airfit.line.Wall
import org.airfit.quantity.AbsolutePressure
import org.airfit.quantity.FreeAirFlow
import org.airfit.quantity.GaugePressure
import org.airfit.quantity.Length
import org.airfit.quantity.Temperature
import org.airfit.run.Run
import org.airfit.run.RunResult
import org.airfit.working.UnitSystem

/** What arrives at the end of a hose; `when` handles both answers, for RunResult is sealed. */
fun firstAnswer(): String {
  val atmosphere = AbsolutePressure.STANDARD_ATMOSPHERE
  val supply = AirState.of(GaugePressure.parse("90 psig").absolute(atmosphere), Temperature.parse("68 °F"))
  val hose = Conduit.of(Length.parse("3/8 in"), Length.parse("50 ft"), Wall.SMOOTH_RUBBER_HOSE)
  val arrived = Run.from(supply, atmosphere).through("hose", hose).at(FreeAirFlow.parse("20 scfm (68 °F)"))
  val sentence = when (arrived) {
    is RunResult.Delivered -> "At the tool: " + UnitSystem.US.say(arrived.atToolGauge())
    is RunResult.Starved -> "The air does not pass the " + arrived.element()
  }
  return (listOf(sentence) + arrived.cautions(UnitSystem.US).map { "Caution. " + it.title() }).joinToString("\n")
}
