package org.airfit.network;

import java.util.List;
import org.airfit.flow.FlowCapacity;
import org.airfit.flow.FlowElement;
import org.airfit.line.Conduit;
import org.airfit.line.LossModel;
import org.airfit.plant.RegulatorElement;
import org.airfit.run.Run;
import org.airfit.safety.Caution;

/**
 * A named branch between two nodes: a line, a part, or an element of the user's own. It obeys the law of the same
 * element in a run.
 */
sealed interface Branch {

  /** {@return its name} */
  String name();

  /** {@return the node at one end} */
  String from();

  /** {@return the node at the other end} */
  String to();

  /** {@return what it does to the air, in either direction} */
  FlowElement element();

  /** {@return whether it lets air through from the one end to the other alone} */
  default boolean isOneWay() {
    return false;
  }

  /** {@return the warnings that go with what it is made of} */
  default List<Caution> cautions() {
    return List.of();
  }

  /**
   * Leads a run through it.
   *
   * @param run a run
   * @return the longer run
   */
  Run lead(Run run);

  /**
   * A pipe, tube or hose.
   *
   * @param name its name
   * @param from the node at one end
   * @param to the node at the other end
   * @param conduit its bore, length, wall and fittings
   * @param model how its loss is found
   */
  record Line(String name, String from, String to, Conduit conduit, LossModel model)
      implements Branch {

    @Override
    public FlowElement element() {
      return model.element(conduit);
    }

    @Override
    public List<Caution> cautions() {
      return conduit.cautions();
    }

    @Override
    public Run lead(Run run) {
      return run.through(name, conduit, model);
    }
  }

  /**
   * A coupling, valve, filter or the like.
   *
   * @param name its name
   * @param from the node at one end
   * @param to the node at the other end
   * @param capacity what it lets through
   */
  record Part(String name, String from, String to, FlowCapacity capacity) implements Branch {

    @Override
    public FlowElement element() {
      return capacity.element();
    }

    @Override
    public Run lead(Run run) {
      return run.through(name, capacity);
    }
  }

  /**
   * A check valve.
   *
   * @param name its name
   * @param from the node it lets air come from
   * @param to the node it lets air go to
   * @param capacity what it lets through, and its cracking pressure
   */
  record CheckValve(String name, String from, String to, FlowCapacity capacity) implements Branch {

    @Override
    public FlowElement element() {
      return capacity.element();
    }

    @Override
    public boolean isOneWay() {
      return true;
    }

    @Override
    public Run lead(Run run) {
      return run.through(name, capacity);
    }
  }

  /**
   * A regulator.
   *
   * @param name its name
   * @param from the node in front
   * @param to the node behind, whose pressure it holds
   * @param element what it is set to, its droop and what its valve lets through
   */
  record Reducer(String name, String from, String to, RegulatorElement element) implements Branch {

    @Override
    public boolean isOneWay() {
      return true;
    }

    @Override
    public Run lead(Run run) {
      return run.through(name, element);
    }
  }

  /**
   * An element of the user's own.
   *
   * @param name its name
   * @param from the node at one end
   * @param to the node at the other end
   * @param element what it does to the air
   */
  record Own(String name, String from, String to, FlowElement element) implements Branch {

    @Override
    public Run lead(Run run) {
      return run.through(name, element);
    }
  }
}
