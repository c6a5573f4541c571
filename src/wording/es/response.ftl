### What a vehicle over a loop means.

response-not-seen = El vehículo cambia el lazo en { $change } como máximo, y la unidad conmuta a { $threshold }. Ajuste una sensibilidad más fina, alargue el lado corto, agregue una vuelta o acorte el cable de conexión.
response-thin-margin = El vehículo cambia el lazo en { $change }, menos del doble de los { $threshold } a los que conmuta la unidad. El pavimento, la edad y el clima se llevan su parte: ajuste una sensibilidad más fina o agrande el lazo.
response-drops-out = La unidad suelta el vehículo cuando su frente está { $lets_go_at } más allá del borde delantero del lazo; la parte trasera llega al lazo a { $tail_reaches_loop_at }. Ajuste una sensibilidad más fina o alargue el lazo en el sentido de la marcha; no use este para retener un portón.
response-blind-strip = En { $blind_strip } del carril, incluido su centro, el vehículo no se detecta: solo se acoplan con él los alambres tendidos en el sentido de la marcha. Un cuadrupolo detecta el centro.
response-rough-answer = La parte inferior está más abajo de lo que el cálculo resuelve para su tamaño ({ $least_height }): el dato es aproximado, con más de 3 % de error.

## Why a default was taken.

response-usual-threshold = El paso de sensibilidad que pide este vehículo.
response-usual-positions = Suficientes para trazar el perfil.
response-riding-line = Donde se calibran los vehículos de dos ruedas: 0.3 m por dentro del alambre lateral, o sobre la ranura central.
response-over-middle = Sobre el centro del lazo.
response-usual-lane = El lazo y la distancia usual al borde de cada lado.
