### The labels and descriptions of the closed lists of `practice::sealing`: a message for each member, `List-code`.

## SurfaceCondition

SurfaceCondition-dry = Sèche
    .description = Aucune humidité visible ni sensible au toucher dans la saignée.
SurfaceCondition-damp = Humide
    .description = Foncée ou fraîche au toucher, et sans eau libre : les scellants à deux composants et appliqués à chaud attendent, sauf si la fiche technique le permet.
SurfaceCondition-wet = Mouillée
    .description = De l'eau libre dans la saignée : aucun scellant n'y entre.
SurfaceCondition-frost = Givre ou glace
    .description = Du givre blanc ou de la glace sur la chaussée ou dans la saignée : aucun scellant n'y entre.

## CureMilestone

CureMilestone-skin_over = Formation de peau
    .description = Une peau s'est formée sur le scellant à un composant; le scellant à deux composants a pris.
CureMilestone-rain_safe = À l'abri de la pluie
    .description = La pluie ne le gâche plus : pris comme le moment où la peau est là.
CureMilestone-open_to_traffic = Remise à la circulation
    .description = Une peau mûrie de 6 mm ou de la moitié du recouvrement, selon le moindre; le scellant à deux composants, de non collant à complètement mûri; le scellant appliqué à chaud, froid. Sur place, le critère est que les roues n'emportent aucun scellant.
CureMilestone-full_cure = Mûrissement complet
    .description = Le front mûri a atteint le fil du dessus; le scellant à deux composants a réagi à cœur.

## CureVerdict

CureVerdict-go = Allez-y
    .description = Rien ne s'y oppose.
CureVerdict-go_with_care = Allez-y avec prudence
    .description = C'est faisable; les raisons disent quoi regarder d'abord.
CureVerdict-wait = Attendez
    .description = Pas à ce début; la prévision a des heures qui conviendraient; si la saignée n'est pas sèche, une fois qu'elle aura été séchée.
CureVerdict-do_not_apply = N'appliquez pas
    .description = Pas à ce début, et la prévision n'a aucune heure qui conviendrait.

## CureHandling

CureHandling-store_warm = Gardez-le au chaud
    .description = Gardez le scellant de 10 à 29 °C (50 à 85 °F) jusqu'à son emploi; sortez ce qu'il faut pour la prochaine heure.
CureHandling-condition_cartridges = Conditionnez-le d'abord
    .description = Un scellant gardé au froid a besoin d'un jour dans une pièce chauffée avant l'emploi; un scellant froid coule mal et emprisonne de l'air.
CureHandling-dry_and_warm_slot = Séchez et chauffez la saignée
    .description = Soufflez la saignée à l'air sec et sans huile et chauffez-la doucement jusqu'à ce que la dalle elle-même, mesurée, soit assez chaude; une lance à air chaud fait les deux. Aucune flamme nue près d'un fil ou d'un combustible.
CureHandling-check_by_touch = Vérifiez au toucher
    .description = Juste avant de mettre le scellant, pressez un essuie-tout sec au fond de la saignée : le sciage à l'eau et la pluie laissent de l'eau là où l'œil ne la voit pas. Soufflez et chauffez ce qui marque l'essuie-tout.
CureHandling-cap_part_used = Bouchez la cartouche entamée
    .description = Fermez aussitôt une cartouche entamée et tenez l'humidité à l'écart; ce qui a formé une peau dans la buse se jette.
CureHandling-mix_small = Mélangez peu, coulez aussitôt
    .description = Par temps chaud, ne mélangez pas plus que ce qui peut être coulé dans la moitié de la durée d'emploi du mélange : un lot plus gros s'échauffe de lui-même et prend plus vite encore.
CureHandling-keep_shaded = Gardez-le à l'ombre
    .description = Gardez le scellant et la saignée hors du soleil, et travaillez aux heures plus fraîches.
CureHandling-kettle_limit = Surveillez le fondoir
    .description = Coulez à la température de la fiche technique et ne chauffez jamais au-delà de sa limite sûre; le scellant surchauffé brûle, se dégrade et abîme l'isolant.
CureHandling-keep_wheels_off = Tenez les roues à l'écart
    .description = Tenez la circulation à l'écart jusqu'à ce que les roues n'emportent plus rien, quoi que dise l'horloge; saupoudrez de sable ou de ciment si une roue ne peut être évitée.
