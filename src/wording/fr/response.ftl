### What a vehicle over a loop means.

response-not-seen = Le véhicule modifie la boucle de { $change } au plus, et le détecteur commute à { $threshold }. Réglez une sensibilité plus fine, allongez le côté court, ajoutez un tour ou raccourcissez le câble de liaison.
response-thin-margin = Le véhicule modifie la boucle de { $change }, moins du double des { $threshold } auxquels le détecteur commute. La chaussée, l'âge et les intempéries en prennent leur part : réglez une sensibilité plus fine ou agrandissez la boucle.
response-drops-out = Le détecteur relâche le véhicule quand son avant est { $lets_go_at } au-delà du bord d'attaque de la boucle; l'arrière atteint la boucle à { $tail_reaches_loop_at }. Réglez une sensibilité plus fine ou allongez la boucle dans le sens de la marche; n'utilisez pas celle-ci pour retenir un portail.
response-blind-strip = Sur { $blind_strip } de la voie, son milieu compris, l'engin n'est pas détecté : seuls les fils posés dans le sens de la marche se couplent avec lui. Un quadripôle détecte le milieu.
response-rough-answer = Le dessous est plus bas que ce que le calcul résout pour sa taille ({ $least_height }) : le chiffre est approximatif à plus de 3 % près.

## Why a default was taken.

response-usual-threshold = Le cran que demande ce véhicule.
response-usual-positions = Assez pour tracer le profil.
response-riding-line = Là où les deux-roues sont étalonnés : 0,3 m à l'intérieur du fil latéral, ou au-dessus de la saignée centrale.
response-over-middle = Au-dessus du milieu de la boucle.
response-usual-lane = La boucle et le retrait habituel de chaque côté.
