### What has failed, and what to test next.

## What the readings and the substitution mean

faults-insulation-reading = { $reading } { $meaning }.
faults-insulation-asked = La fiche technique du détecteur demande { $insulation_min }.
faults-test-voltage = L'isolement a été essayé à { $test_voltage }; les limites des organismes valent à { $usual_test_voltage }, et une fuite peut rester cachée à moins. Refaites l'essai à { $usual_test_voltage } si le fil et tout ce qui reste branché le supportent.
faults-reading-temperature = À { $temperature }, le cuivre a { $difference } de résistance { $direction ->
    [more] de plus
   *[less] de moins
} qu'à 20 °C : une boucle en bon état montre { $expected_low-number } à { $expected_high }, et c'est ainsi que les suspects sont jugés.
faults-contradictory-readings = Aucun défaut unique n'explique à lui seul ces lectures : { $readings }. L'une d'elles est fausse, ou il y a deux défauts. Mesurez chacune de nouveau, après avoir vérifié les cordons de mesure, avant d'agir sur les suspects.
faults-contradictory-substitutions = Sur une inductance connue, le détecteur fonctionne avec plus de circuit branché que là où il ne fonctionne pas : l'un des essais est faux, ou le défaut va et vient. Aucun des deux n'écarte quoi que ce soit; refaites les deux, le plus proche d'abord.
faults-substitution-void = L'inductance connue est de { $inductance } et le détecteur s'accorde de { $inductance_min-number } à { $inductance_max } : qu'il fonctionne ou non ne dit rien. Refaites l'essai avec une inductance au milieu de cette plage.
faults-substitute-does-not-run = Sur une inductance connue, le détecteur ne fonctionne pas : le défaut est dans { $connected_at-code ->
    [unit_terminals] le détecteur ou son alimentation
    [harness_end] le détecteur, son alimentation ou le faisceau
   *[lead_in_end] le détecteur, son alimentation, le faisceau ou le câble de liaison
}, pas dans la boucle.
faults-substitute-does-not-switch = Sur une inductance connue, le détecteur fonctionne mais ne commute pas : examinez d'abord le détecteur, sa sensibilité et sa sortie.
faults-substitute-runs = Sur une inductance connue, le détecteur fonctionne : { $connected_at-code ->
    [unit_terminals] le détecteur et son alimentation sont bons, et le défaut est dans le faisceau, le câble de liaison ou la boucle
    [harness_end] le détecteur, son alimentation et le faisceau sont bons, et le défaut est dans le câble de liaison ou la boucle
   *[lead_in_end] le détecteur, son alimentation, le faisceau et le câble de liaison sont bons, et le défaut est dans l'épissure ou la boucle
}.

faults-insulation-dry = Le défaut vient avec la pluie et le sol était sec; une bonne lecture n'écarte donc rien : mouillez la saignée, l'épissure et le câble de liaison, et mesurez de nouveau.
faults-break-place = La paire ouverte a { $capacitance } des { $whole_capacitance } qu'a une paire entière : { $place ->
    [lead_in] le fil est ouvert dans le câble de liaison, à environ { $share } du parcours du détecteur à la boucle
    [unknown] c'est plus que ce câble de liaison et une boucle peuvent avoir, donc l'un des deux chiffres est d'un autre câble; mesurez une paire semblable et relisez
   *[splice_or_loop] cela va jusqu'à l'épissure, donc le fil est ouvert à l'épissure ou dans la boucle; ouvrez l'épissure et mesurez la boucle seule
}.
faults-break-distance = Cherchez à { $distance } du détecteur, le long du câble.
faults-gate-seen = Une boucle qui détecte son portail s'examine avec les boucles branchées : lisez le niveau ou la fréquence du détecteur, portail fermé puis ouvert, ou déplacez le vantail à la main, la motorisation du portail cadenassée et la course du vantail surveillée. Ne débranchez jamais une boucle qui retient le portail tant que le portail peut bouger. Ne réglez un cran moins sensible que si chaque véhicule y est encore détecté; sinon, la boucle ou le vantail doit être déplacé.

## A reading, at the beginning of a sentence or in a list

faults-reading = { $meter ->
    [insulation_megohm] Isolement
    [resistance_ohm] Résistance
    [inductance_uh] Inductance
    [capacitance_nf] Capacité
   *[quality_factor] Facteur de qualité
} { $range ->
    [over_range] au-dessus de la gamme
   *[number] de { $measured }
}

## What speaks for and against a fault

faults-reading-evidence = { $reading } { $verdict ->
    [for] concorde avec ce défaut
   *[against] ne concorde pas avec ce défaut
}{ $expected ->
    [range] {" "}({ $expected_low } à { $expected_high } attendus)
    [over_range] {" "}(lecture au-dessus de la gamme attendue)
   *[unknown] {""}
}.
faults-observation-evidence = « { $observation-label } » { $verdict ->
    [for] est habituel avec ce défaut
   *[against] est inhabituel avec ce défaut
}.
faults-substitution-evidence = Le détecteur { $outcome ->
    [runs] fonctionne
   *[does_not_run] ne fonctionne pas
} sur une inductance connue ({ $connected_at-label }), ce qui { $verdict ->
    [for] concorde avec ce défaut
   *[against] va à l'encontre d'un défaut à cet endroit
}.

faults-test-evidence = L'essai « { $test-label } » a montré : { $outcome-label }. Cela { $verdict ->
    [for] concorde avec ce défaut
   *[against] va à l'encontre de ce défaut
}.

## The form of a fault, behind its name

faults-in-loop = dans la boucle
faults-in-lead-in = dans le câble de liaison
faults-at-splice = à l'épissure de la boucle et du câble de liaison
faults-along-lead-in = le long du câble de liaison
faults-turn-of-count-closed = un tour de { $turns } fermé sur lui-même
faults-turn-closed = un tour fermé sur lui-même
faults-turn-bridged = le tour ponté
faults-bridged-at-tails = la boucle pontée à ses bouts
faults-bridged-along-lead-in = la paire pontée le long du câble de liaison
faults-wrong-turns = { $turns ->
    [one] { $turns } tour
   *[other] { $turns } tours
} au lieu de { $designed_turns }
faults-turns-too-few = trop peu de tours
faults-turns-too-many = trop de tours
faults-other-loop-connected = une autre boucle est branchée
faults-wires-of-two-loops-connected = un fil de chacune de deux boucles est branché
faults-metal-at-rest = du métal qui reste là
faults-metal-of-the-gate = le métal du portail lui-même en mouvement
faults-in-unit = dans le détecteur
faults-in-arrester = dans le parafoudre

## The test to do next

faults-test-reason = { $minutes } minutes; { faults-disturbs }. De tous les essais qui restent, c'est celui qui en dit le plus à ce prix. Le plus probable pour l'instant : { $suspects }.
faults-test-comes-first = { $minutes } minutes; { faults-disturbs }. { $test ->
    [insulation_test_wet] Le défaut vient avec la pluie et l'isolement était bon en sol sec : rien d'autre ne vaut la peine avant de mouiller.
   *[split_at_splice] L'isolement est mauvais, et seule l'épissure ouverte dit si c'est la boucle, le câble de liaison ou l'épissure elle-même.
}
faults-test-confirms = { $minutes } minutes; { faults-disturbs }. Le défaut est pratiquement trouvé, et cet essai le confirme : la réparation vient ensuite.
faults-test-proves = { $minutes } minutes; { faults-disturbs }. Aucun essai { $scope ->
    [allowed] possible dans le temps qui reste, avec ce qu'il est permis de défaire,
   *[all] parmi ceux qui restent
} n'en dirait plus : réparez ce qui est le plus probable, puis prouvez-le ainsi.
faults-join-splice-first = Refermez d'abord l'épissure : la boucle doit être branchée à son détecteur avant que le portail puisse bouger.
faults-disturbs = { $disturbs-code ->
    [nothing] rien de plus n'est débranché
    [plug] seules une fiche ou des bornes sont ouvertes
    [splice] l'épissure est ouverte et refaite
   *[pavement] la saignée est ouverte et scellée de nouveau
}
faults-seen = { $outcome-label }
faults-suspect-placed = { $suspect }{ $place ->
    [lead_in] {" "}dans le câble de liaison
    [splice] {" "}à l'épissure
    [loop] {" "}dans la boucle
   *[anywhere] {""}
}
faults-dry-clears-nothing = Le sol est sec; une bonne lecture n'écarte donc rien : mouillez la saignée, l'épissure et le câble de liaison, et mesurez de nouveau.
faults-outcome-means = { $certainty ->
    [settled] Alors c'est ceci : { $suspects }
    [leaning] Alors c'est très probablement ceci : { $suspects }
   *[open] Alors il reste ceci : { $suspects }
}.

## Why a default was taken

faults-usual-place = Là où les appareils de mesure se branchent d'abord.
faults-inductance-by-tank = Celle qui fait fonctionner le détecteur à sa fréquence avec la capacité du circuit oscillant de sa fiche technique.
faults-usual-ground = Personne n'a dit que le sol était mouillé; une bonne lecture en sol sec n'écarte rien de ce qui vient avec la pluie.
faults-usual-sizes = La dimension n'est pas connue : les boucles aux ouvertures sont rarement plus petites ou plus grandes. Mesurez-la au pas et donnez-la.
faults-usual-loops = Ni le plan de la boucle ni un relevé de celle-ci ne sont connus : ce que les boucles ont d'habitude en tient lieu, donc seul ce qui en diffère beaucoup est signalé.
