### What the electrical figures of a loop mean.

characteristics-lead-in-outweighs-loop = Le câble de liaison { $weight ->
    [more] a plus d'inductance que la boucle
   *[over_half] a plus de la moitié de l'inductance de la boucle
} : seulement { $loop_share } d'un changement à la boucle parvient au détecteur. Ajoutez un tour, raccourcissez le câble de liaison ou réglez une sensibilité plus fine.
characteristics-below-envelope = Terminée, elle mesurera de { $as_built_low-number } à { $as_built_high } au détecteur, et un détecteur s'accorde à partir de { $inductance_min } : { $outcome ->
    [untunable] aucun détecteur de ce genre ne s'y accorde
   *[doubtful] il se peut qu'il ne s'accorde pas
}. Bobinez un tour de plus.
characteristics-above-envelope = Terminée, elle mesurera de { $as_built_low-number } à { $as_built_high } au détecteur, et un détecteur s'accorde jusqu'à { $inductance_max } : { $outcome ->
    [untunable] aucun détecteur de ce genre ne s'y accorde
   *[doubtful] il se peut qu'il ne s'accorde pas
}. Bobinez un tour de moins ou raccourcissez le câble de liaison.
characteristics-high-resistance = La boucle et le câble de liaison ont une résistance de { $dc_resistance }; un organisme accepte au plus { $limit-number }. Prenez un câble de liaison plus gros ou plus court.
characteristics-low-quality = Le facteur de qualité est au mieux de { $quality_factor }, et il faut au détecteur { $quality_factor_min }. Prenez du fil plus gros ou un câble de liaison plus court.
characteristics-near-self-resonance = Avec cette capacité, la boucle résonne d'elle-même à { $self_resonance }. À { $frequency }, un appareil de mesure ou un détecteur voit plus d'inductance qu'il n'y en a. Prenez une fréquence plus basse ou moins de tours.
characteristics-steel-below = L'acier situé { $depth_below_loop } plus bas prend au plus { $inductance_drop_bound } de l'inductance de la boucle, comme s'il était une tôle pleine, et abaisse la hauteur à laquelle le métal est détecté. Un treillis en prend moins. Posez la boucle aussi haut au-dessus de l'acier que le permet le recouvrement.

## Why a default was taken.

characteristics-usual-frequency = La fréquence de l'essai de réception d'un organisme.
characteristics-usual-temperature = La température à laquelle valent les tables de fils.
characteristics-no-shunt-capacitance = Il n'existe aucune donnée publique sur la capacité des saignées et des câbles.
