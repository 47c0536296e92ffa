/** What every page is styled with: the kit's ground and the variables of the theme, without its components. */
import '@mantine/core/styles/baseline.layer.css';
import '@mantine/core/styles/default-css-variables.layer.css';
import '@mantine/core/styles/global.layer.css';
import 'virtual:theme.css';
import './base.css';
