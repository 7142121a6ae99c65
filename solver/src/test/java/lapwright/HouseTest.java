package lapwright;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.classes;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static com.tngtech.archunit.library.dependencies.SlicesRuleDefinition.slices;

import com.tngtech.archunit.base.DescribedPredicate;
import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.importer.ImportOption;
import com.tngtech.archunit.junit.AnalyzeClasses;
import com.tngtech.archunit.junit.ArchTest;
import com.tngtech.archunit.lang.ArchCondition;
import com.tngtech.archunit.lang.ArchRule;
import com.tngtech.archunit.lang.ConditionEvents;
import com.tngtech.archunit.lang.SimpleConditionEvent;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.util.Random;
import java.util.Set;
import java.util.TreeSet;
import java.util.concurrent.ThreadLocalRandom;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** The borders between the packages of the solver, as DEVELOPERS.md draws them. */
@AnalyzeClasses(packages = "lapwright", importOptions = ImportOption.DoNotIncludeTests.class)
class HouseTest {

  private static String in(String name) {
    return name.isEmpty() ? "lapwright" : "lapwright." + name;
  }

  /** A package may use these packages of the project and no others. */
  private static ArchRule uses(String name, String... others) {
    Set<String> allowed =
        Stream.concat(Stream.of(name), Stream.of(others))
            .map(HouseTest::in)
            .collect(Collectors.toCollection(TreeSet::new));
    return noClasses()
        .that()
        .resideInAPackage(in(name))
        .should()
        .dependOnClassesThat(
            DescribedPredicate.<JavaClass>describe(
                "are of the project outside " + allowed,
                other ->
                    (other.getPackageName() + ".").startsWith("lapwright.")
                        && !allowed.contains(other.getPackageName())));
  }

  @ArchTest static final ArchRule measureUsesNothing = uses("measure");
  @ArchTest static final ArchRule effortUsesNothing = uses("effort");
  @ArchTest static final ArchRule shop = uses("shop", "measure");
  @ArchTest static final ArchRule layout = uses("layout", "measure", "shop");
  @ArchTest static final ArchRule plan = uses("plan", "measure", "shop");
  @ArchTest static final ArchRule check = uses("check", "measure", "shop", "plan");
  @ArchTest static final ArchRule allot = uses("allot", "measure", "effort", "shop", "plan");
  @ArchTest static final ArchRule problem = uses("problem", "measure", "effort");
  @ArchTest static final ArchRule mip = uses("mip", "effort");

  @ArchTest static final ArchRule colgen = uses("colgen", "measure", "effort", "mip", "problem");

  @ArchTest
  static final ArchRule refute = uses("refute", "measure", "effort", "mip", "problem", "colgen");

  @ArchTest
  static final ArchRule exact =
      uses("exact", "measure", "effort", "mip", "problem", "colgen", "refute");

  @ArchTest
  static final ArchRule demand =
      uses("demand", "measure", "effort", "shop", "layout", "plan", "problem");

  @ArchTest
  static final ArchRule lots =
      uses("lots", "measure", "effort", "shop", "plan", "problem", "demand", "splice");

  @ArchTest
  static final ArchRule paperwork =
      classes()
          .that()
          .resideInAPackage(in("paperwork"))
          .should()
          .onlyDependOnClassesThat(
              DescribedPredicate.<JavaClass>describe(
                  "solve nothing",
                  other ->
                      !Set.of(
                              "mip", "colgen", "refute", "exact", "splice", "lots", "problem",
                              "allot")
                          .stream()
                          .map(HouseTest::in)
                          .toList()
                          .contains(other.getPackageName())));

  @ArchTest
  static final ArchRule orToolsOnlyInMip =
      noClasses()
          .that()
          .resideOutsideOfPackage(in("mip"))
          .should()
          .dependOnClassesThat()
          .resideInAPackage("com.google.ortools..");

  @ArchTest
  static final ArchRule noCycles = slices().matching("lapwright.(*)..").should().beFreeOfCycles();

  @ArchTest
  static final ArchRule nothingInTheSolverUsesThePlanner =
      noClasses()
          .that()
          .resideOutsideOfPackages("lapwright", in("compare"), in("paperwork"))
          .should()
          .dependOnClassesThat()
          .resideInAPackage("lapwright");

  @ArchTest
  static final ArchRule printsNothingAndNeverExits =
      noClasses()
          .should()
          .accessField(System.class, "out")
          .orShould()
          .accessField(System.class, "err")
          .orShould()
          .accessField(System.class, "in")
          .orShould()
          .callMethod(System.class, "exit", int.class)
          .orShould()
          .callMethod(Throwable.class, "printStackTrace");

  @ArchTest
  static final ArchRule hasNoClockAndNoDice =
      noClasses()
          .should()
          .callMethod(System.class, "nanoTime")
          .orShould()
          .callMethod(System.class, "currentTimeMillis")
          .orShould()
          .callMethod(LocalDate.class, "now")
          .orShould()
          .callMethod(LocalDateTime.class, "now")
          .orShould()
          .callMethod(Instant.class, "now")
          .orShould()
          .callMethod(Math.class, "random")
          .orShould()
          .dependOnClassesThat()
          .belongToAnyOf(Random.class, ThreadLocalRandom.class);

  @ArchTest
  static final ArchRule arithmeticIsExact =
      classes()
          .that()
          .resideInAnyPackage(
              in("measure"),
              in("shop"),
              in("layout"),
              in("problem"),
              in("demand"),
              in("allot"),
              in("plan"),
              in("check"),
              in("paperwork"))
          .should(haveNoFloatingPoint());

  /** No field, parameter, result or call has to do with floating point. */
  private static ArchCondition<JavaClass> haveNoFloatingPoint() {
    Set<String> inexact = Set.of("double", "float", "java.lang.Double", "java.lang.Float");
    return new ArchCondition<>("have no floating point") {
      @Override
      public void check(JavaClass type, ConditionEvents events) {
        Stream<String> fields =
            type.getFields().stream()
                .filter(field -> inexact.contains(field.getRawType().getName()))
                .map(field -> field.getFullName());
        Stream<String> units =
            type.getCodeUnits().stream()
                .filter(
                    unit ->
                        Stream.concat(
                                Stream.of(unit.getRawReturnType()),
                                unit.getRawParameterTypes().stream())
                            .anyMatch(used -> inexact.contains(used.getName())))
                .map(unit -> unit.getFullName());
        Stream<String> calls =
            type.getCodeUnitCallsFromSelf().stream()
                .filter(
                    call ->
                        Stream.concat(
                                Stream.of(
                                    call.getTarget().getOwner(),
                                    call.getTarget().getRawReturnType()),
                                call.getTarget().getRawParameterTypes().stream())
                            .anyMatch(used -> inexact.contains(used.getName())))
                .map(call -> call.getDescription());
        Stream.of(fields, units, calls)
            .flatMap(found -> found)
            .forEach(found -> events.add(SimpleConditionEvent.violated(type, found)));
      }
    };
  }
}
