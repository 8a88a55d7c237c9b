/* SPDX-License-Identifier: Apache-2.0 */
package oblate.launcher;

import static com.tngtech.archunit.base.DescribedPredicate.not;
import static com.tngtech.archunit.core.domain.JavaClass.Predicates.resideInAPackage;
import static com.tngtech.archunit.core.domain.JavaClass.Predicates.resideInAnyPackage;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.classes;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noFields;
import static com.tngtech.archunit.library.dependencies.SlicesRuleDefinition.slices;
import static org.assertj.core.api.Assertions.assertThat;

import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.domain.JavaModifier;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import com.tngtech.archunit.library.GeneralCodingRules;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Holds the line of stages and who may see which library (design: one straight line; a stage knows only the stages before it). */
class ArchitectureTest {
    private static final JavaClasses PROGRAM = new ClassFileImporter()
            .withImportOption(ImportOption.Predefined.DO_NOT_INCLUDE_TESTS)
            .withImportOption(place -> !place.contains("-tests.jar"))
            .importPackages("oblate");

    /** The line of stages; base stands below all of them. */
    private static final List<String> LINE = List.of("base", "sky", "image", "disc", "archive", "drift", "report");

    private static final String[] PANELS = {
        "oblate.workbench..", "oblate.chartpanel..", "oblate.moonspanel..", "oblate.tonightpanel.."
    };

    @Test
    void theWholeProgramWasLookedAt() {
        assertThat(PROGRAM.size()).isGreaterThan(250);
        for (String known : List.of(
                "oblate.base.PluginHost",
                "oblate.sky.Sky",
                "oblate.image.PictureReader",
                "oblate.disc.DiscFitter",
                "oblate.archive.Archive",
                "oblate.drift.DriftFitter",
                "oblate.report.Reports",
                "oblate.command.Program",
                "oblate.workbench.Workbench",
                "oblate.launcher.Main",
                "oblate.planet.jupiter.Jupiter",
                "oblate.chartpanel.ChartPanel",
                "oblate.moonspanel.MoonsPanel",
                "oblate.tonightpanel.TonightPanel",
                "oblate.sample.SampleSeason")) {
            assertThat(PROGRAM.contain(known)).as(known).isTrue();
        }
    }

    @Test
    void aStageKnowsOnlyTheStagesBeforeIt() {
        for (int stage = 0; stage < LINE.size(); stage++) {
            String[] later = LINE.subList(stage + 1, LINE.size()).stream()
                    .map(s -> "oblate." + s + "..")
                    .toArray(String[]::new);
            String own = "oblate." + LINE.get(stage) + "..";
            if (later.length > 0) {
                noClasses()
                        .that()
                        .resideInAPackage(own)
                        .should()
                        .dependOnClassesThat()
                        .resideInAnyPackage(later)
                        .check(PROGRAM);
            }
            noClasses()
                    .that()
                    .resideInAPackage(own)
                    .should()
                    .dependOnClassesThat()
                    .resideInAnyPackage(
                            "oblate.command..", "oblate.workbench..", "oblate.launcher..", "oblate.sample..")
                    .check(PROGRAM);
        }
    }

    @Test
    void noStageKnowsAPlugin() {
        classes()
                .that()
                .resideInAnyPackage(LINE.stream().map(s -> "oblate." + s + "..").toArray(String[]::new))
                .should()
                .onlyDependOnClassesThat(not(resideInAnyPackage(
                        "oblate.planet..",
                        "oblate.format..",
                        "oblate.tables..",
                        "oblate.chartpanel..",
                        "oblate.moonspanel..",
                        "oblate.tonightpanel..")))
                .check(PROGRAM);
        noClasses()
                .that()
                .resideInAnyPackage("oblate.command..", "oblate.workbench..")
                .should()
                .dependOnClassesThat()
                .resideInAnyPackage(
                        "oblate.planet..",
                        "oblate.format..",
                        "oblate.tables..",
                        "oblate.chartpanel..",
                        "oblate.moonspanel..",
                        "oblate.tonightpanel..")
                .check(PROGRAM);
    }

    @Test
    void theSampleSharesNothingWithTheFit() {
        noClasses()
                .that()
                .resideInAPackage("oblate.sample..")
                .should()
                .dependOnClassesThat()
                .resideInAnyPackage("oblate.disc..", "oblate.image..", "oblate.archive..", "oblate.drift..")
                .check(PROGRAM);
    }

    @Test
    void librariesStayInTheirRooms() {
        only("org.orekit..", "oblate.sky..");
        only("java.sql..", "oblate.archive..");
        only("javax.sql..", "oblate.archive..");
        only("org.jdbi..", "oblate.archive..");
        only("org.flywaydb..", "oblate.archive..");
        only("picocli..", "oblate.command..");
        only("org.jfree..", "oblate.chartpanel..");
        only("org.apache.batik..", "oblate.chartpanel..");
        only("nom.tam..", "oblate.format.fits..", "oblate.sample..");
        only("javax.swing..", PANELS);
        only("java.awt.event..", PANELS);
        only("com.formdev..", PANELS);
        only("net.miginfocom..", PANELS);
    }

    private static void only(String library, String... rooms) {
        noClasses()
                .that(not(resideInAnyPackage(rooms)))
                .should()
                .dependOnClassesThat()
                .resideInAPackage(library)
                .because(library + " is seen only in " + String.join(", ", rooms))
                .check(PROGRAM);
    }

    @Test
    void onlyTheCommandLineTalksToTheStandardStreams() {
        noClasses()
                .that(not(resideInAPackage("oblate.command..")))
                .should(GeneralCodingRules.ACCESS_STANDARD_STREAMS)
                .check(PROGRAM);
    }

    @Test
    void packagesHaveNoCycles() {
        slices().matching("oblate.(*)..").should().beFreeOfCycles().check(PROGRAM);
    }

    @Test
    void noStaticsWithState() {
        noFields()
                .that()
                .areStatic()
                .and()
                .areDeclaredInClassesThat()
                .resideInAPackage("oblate..")
                .should()
                .notBeFinal()
                .check(PROGRAM);
        assertThat(PROGRAM.stream().flatMap(c -> c.getFields().stream()).filter(f -> f.getModifiers()
                        .contains(JavaModifier.STATIC)))
                .isNotEmpty();
    }

    @Test
    void noClassIsCalledUtilManagerOrHelper() {
        noClasses()
                .should()
                .haveSimpleNameEndingWith("Util")
                .orShould()
                .haveSimpleNameEndingWith("Utils")
                .orShould()
                .haveSimpleNameEndingWith("Manager")
                .orShould()
                .haveSimpleNameEndingWith("Helper")
                .check(PROGRAM);
    }
}
