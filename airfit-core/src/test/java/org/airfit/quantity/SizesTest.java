package org.airfit.quantity;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import java.lang.reflect.Method;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

/** A thread size, a hose bore and a body size: three things called 3/8. */
class SizesTest {

  @ParameterizedTest
  @ValueSource(
      strings = {"1-1/4", "1 1/4", "1¼", "1-1/4 in", "1-1/4\"", "1 1/4 inch", "1.25", "5/4"})
  void a_thread_size_is_found_however_it_is_written(String text) {
    assertThat(NominalThreadSize.parse(text)).isEqualTo(NominalThreadSize.ONE_AND_A_QUARTER);
  }

  @ParameterizedTest
  @EnumSource
  void a_thread_size_reads_back(NominalThreadSize size) {
    assertThat(NominalThreadSize.parse(size.toString())).isEqualTo(size);
    assertThat(size.label()).isEqualTo(size.toString());
  }

  @ParameterizedTest
  @EnumSource
  void a_body_size_reads_back(BasicBodySize size) {
    assertThat(BasicBodySize.parse(size.toString())).isEqualTo(size);
    assertThat(BasicBodySize.parse(size.label())).isEqualTo(size);
    assertThat(BasicBodySize.parse(size.label() + " in body")).isEqualTo(size);
    assertThat(size).hasToString(size.label() + " body");
  }

  @Test
  void a_size_that_does_not_exist_is_told_which_do() {
    assertThatExceptionOfType(QuantityFormatException.class)
        .isThrownBy(() -> NominalThreadSize.parse("5/8"))
        .withMessage("\"5/8\": there is no such nominal thread size, at position 0; accepted: 1/16,"
            + " 1/8, 1/4, 3/8, 1/2, 3/4, 1, 1-1/4, 1-1/2, 2, 2-1/2, 3, 3-1/2, 4");
    assertThatExceptionOfType(QuantityFormatException.class)
        .isThrownBy(() -> BasicBodySize.parse("3/4"))
        .withMessageContaining("there is no such basic body size")
        .withMessageEndingWith("accepted: 1/4, 3/8, 1/2");
  }

  /** 12.7 mm is a length: no pipe thread is called so. A thread call-out has more in it than a size. */
  @ParameterizedTest
  @ValueSource(strings = {"12.7 mm", "1-11 1/2", "1/2-14", "3/8 NPT", ""})
  void what_is_no_thread_size_is_refused(String text) {
    assertThatExceptionOfType(QuantityFormatException.class)
        .isThrownBy(() -> NominalThreadSize.parse(text));
  }

  /** Nothing turns one of the three into another, by factory or by reader. */
  @Test
  void the_three_do_not_turn_into_one_another() {
    List<Class<?>> sizes = List.of(NominalThreadSize.class, HoseBore.class, BasicBodySize.class);
    for (Class<?> size : sizes) {
      Stream<Method> methods = Arrays.stream(size.getDeclaredMethods());
      assertThat(methods.flatMap(method -> Stream.concat(
              Stream.of(method.getReturnType()), Arrays.stream(method.getParameterTypes()))))
          .as("%s", size)
          .noneMatch(type -> sizes.contains(type) && type != size);
    }
    assertThat(NominalThreadSize.class.getDeclaredMethods())
        .noneMatch(method -> method.getReturnType() == Length.class);
    assertThat(BasicBodySize.class.getDeclaredMethods())
        .noneMatch(method -> method.getReturnType() == Length.class);
  }

  static Stream<HoseBore> bores() {
    return Stream.of(
        HoseBore.parse("3/8 in"),
        HoseBore.parse("10 mm ID"),
        HoseBore.parse("1-1/4\" hose"),
        HoseBore.parse(" 1/2  in  bore "),
        HoseBore.parse("10 mm (ID)"),
        HoseBore.parse("10\u00a0mm\u00a0bore"),
        HoseBore.of(Length.ofMillimetres(12.7)),
        HoseBore.of(Length.ofInches(5.0 / 16.0)),
        HoseBore.of(Length.ofMillimetres(12.34567)),
        HoseBore.of(Length.ofInches(0.4999)));
  }

  @ParameterizedTest
  @MethodSource("bores")
  void a_hose_bore_reads_back(HoseBore bore) {
    assertThat(HoseBore.parse(bore.toString())).isEqualTo(bore);
    assertThat(HoseBore.parse(bore.toString()).label()).isEqualTo(bore.label());
    assertThat(Length.parse(bore.label())).isEqualTo(bore.nominal());
  }

  @Test
  void a_hose_bore_keeps_the_words_it_was_given_in() {
    assertThat(HoseBore.parse("3/8 in ID")).hasToString("3/8 in bore");
    assertThat(HoseBore.parse("3/8 in I.D.").label()).isEqualTo("3/8 in");
    assertThat(HoseBore.parse("10 mm").label()).isEqualTo("10 mm");
    assertThat(HoseBore.of(Length.ofInches(0.375)).label()).isEqualTo("9.525 mm");
    assertThat(HoseBore.parse("3/8 in"))
        .isEqualTo(HoseBore.of(Length.ofMillimetres(9.525)))
        .hasSameHashCodeAs(HoseBore.of(Length.ofMillimetres(9.525)))
        .isLessThan(HoseBore.parse("10 mm"))
        .isNotEqualTo(HoseBore.parse("10 mm"))
        .isNotEqualTo("3/8 in");
  }

  @ParameterizedTest
  @ValueSource(doubles = {0.999, 500.1})
  void a_bore_no_hose_has_is_refused(double millimetres) {
    assertThatIllegalArgumentException()
        .isThrownBy(() -> HoseBore.of(Length.ofMillimetres(millimetres)))
        .withMessage("hose bore must be in [1, 500] mm, was " + millimetres + " mm");
    assertThatExceptionOfType(QuantityFormatException.class)
        .isThrownBy(() -> HoseBore.parse(millimetres + " mm"));
  }

  @Test
  void the_ends_of_the_range_are_accepted() {
    assertThat(HoseBore.of(Length.ofMillimetres(1)).nominal().millimetres()).isEqualTo(1);
    assertThat(HoseBore.of(Length.ofMillimetres(500)).nominal().millimetres()).isEqualTo(500);
  }

  @Test
  void a_bore_without_its_unit_is_refused() {
    assertThatExceptionOfType(QuantityFormatException.class)
        .isThrownBy(() -> HoseBore.parse("3/8"))
        .withMessageContaining("the unit is missing, at position 3");
  }
}
